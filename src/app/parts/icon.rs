//! The few icons, drawn for this product: a drop in its states, an arrow, a
//! warning. Each stands beside a word and is hidden from screen readers.

use crate::app::view::prelude::*;

/// Which icon.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Icon {
    /// An empty drop: nothing yet.
    Empty,
    /// A half drop: begun, or not proven.
    Half,
    /// A full drop: done, or proven.
    Full,
    /// A triangle: act now, or a caution.
    Warning,
    /// Back.
    Back,
    /// Refused.
    Cross,
    /// Kept on disk.
    Kept,
    /// A calculation.
    Equals,
    /// A site: its basin.
    Basin,
}

/// Draws an icon at the size of the text beside it.
#[component]
pub fn Draw(icon: Icon) -> View {
    let body = match icon {
        Icon::Empty => {
            r#"<path d="M10 1.5C13 6 16 9 16 12.3a6 6 0 1 1-12 0C4 9 7 6 10 1.5Z" stroke-width="2"/>"#
        }
        Icon::Half => {
            r#"<path d="M10 1.5C13 6 16 9 16 12.3a6 6 0 1 1-12 0C4 9 7 6 10 1.5Z" stroke-width="2"/><path d="M4 12.3a6 6 0 0 0 12 0Z" fill="currentColor" stroke="none"/>"#
        }
        Icon::Full => {
            r#"<path d="M10 1.5C13 6 16 9 16 12.3a6 6 0 1 1-12 0C4 9 7 6 10 1.5Z" fill="currentColor" stroke-width="2"/>"#
        }
        Icon::Warning => {
            r#"<path d="M10 2 18.5 17.5H1.5Z" stroke-width="2" stroke-linejoin="round"/><path d="M10 7.5v5M10 14v1.6" stroke-width="2"/>"#
        }
        Icon::Back => r#"<path d="M13 3 6 10l7 7" stroke-width="2.5"/>"#,
        Icon::Cross => r#"<path d="M4 4l12 12M16 4 4 16" stroke-width="2.5"/>"#,
        Icon::Equals => r#"<path d="M3.5 7h13M3.5 13h13" stroke-width="2.5"/>"#,
        Icon::Basin => r#"<path d="M2.5 4v12.5h15V4M2.5 9.5h15" stroke-width="2"/>"#,
        Icon::Kept => r#"<path d="M3 10.5 8 15.5 17 4.5" stroke-width="2.5"/>"#,
    };
    markup! {
        <svg
            width="20"
            height="20"
            viewBox="0 0 20 20"
            fill="none"
            stroke="currentColor"
            aria-hidden="true"
            inner_html=body
        ></svg>
    }
}
