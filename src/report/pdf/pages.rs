//! Laying strips on pages.

use super::strip::Strip;
use super::style::Frame;

/// A strip at its place: `y` from the top of the sheet to the strip's top.
pub(super) struct Placed {
    pub(super) y: f32,
    pub(super) strip: Strip,
}

/// The strips of one page.
pub(super) type Page = Vec<Placed>;

/// Lays strips on as many pages as they need; at least one.
pub(super) fn paginate(strips: Vec<Strip>, frame: &Frame) -> Vec<Page> {
    let mut pages: Vec<Page> = vec![Vec::new()];
    let mut y = frame.top;
    // What must follow each strip on the same page, itself included.
    let mut needs: Vec<f32> = strips.iter().map(|s| s.height).collect();
    for i in (0..strips.len().saturating_sub(1)).rev() {
        if strips[i].keep_next && !strips[i + 1].break_before {
            needs[i] += strips[i + 1].before + needs[i + 1];
        }
    }
    for (i, strip) in strips.into_iter().enumerate() {
        let fresh = pages.last().is_none_or(Vec::is_empty);
        let before = if fresh { 0.0 } else { strip.before };
        let room = frame.foot - y - before;
        // A group taller than a page cannot be kept whole; then only the
        // strip itself counts.
        let need = if needs[i] > frame.foot - frame.top {
            strip.height
        } else {
            needs[i]
        };
        if !fresh && (strip.break_before || need > room) {
            pages.push(Vec::new());
            y = frame.top;
            if let Some(head) = &strip.head {
                y = place(&mut pages, (**head).clone(), y, 0.0);
            }
            y = place(&mut pages, strip, y, 0.0);
        } else {
            y = place(&mut pages, strip, y, before);
        }
    }
    // A break at the very end asks for no page.
    if pages.len() > 1 && pages.last().is_some_and(Vec::is_empty) {
        pages.pop();
    }
    pages
}

fn place(pages: &mut [Page], strip: Strip, y: f32, before: f32) -> f32 {
    let top = y + before;
    let foot = top + strip.height;
    if let Some(page) = pages.last_mut()
        && (strip.height > 0.0 || !strip.items.is_empty())
    {
        page.push(Placed { y: top, strip });
    }
    foot
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::doc::PageSize;
    use std::rc::Rc;

    fn frame() -> Frame {
        Frame {
            top: 0.0,
            foot: 100.0,
            ..Frame::new(PageSize::Letter)
        }
    }

    #[test]
    fn a_heading_goes_with_what_follows() {
        let heading = Strip {
            keep_next: true,
            ..Strip::blank(20.0)
        };
        let pages = paginate(
            vec![Strip::blank(70.0), heading, Strip::blank(20.0)],
            &frame(),
        );
        assert_eq!(pages.len(), 2);
        assert_eq!(pages[0].len(), 1);
        assert_eq!(pages[1].len(), 2);
    }

    #[test]
    fn a_table_head_is_repeated() {
        let head = Rc::new(Strip::blank(10.0));
        let rows = (0..5)
            .map(|_| Strip {
                head: Some(head.clone()),
                ..Strip::blank(30.0)
            })
            .collect();
        let pages = paginate(rows, &frame());
        assert_eq!(pages[0].len(), 3);
        assert_eq!(pages[1].len(), 3, "head and two rows");
        assert_eq!(pages[1][0].strip.height, 10.0);
    }

    #[test]
    fn a_chain_longer_than_a_page_still_ends() {
        let strips = (0..9)
            .map(|_| Strip {
                keep_next: true,
                ..Strip::blank(30.0)
            })
            .collect();
        assert_eq!(paginate(strips, &frame()).len(), 3);
    }

    #[test]
    fn a_break_at_the_top_of_a_page_makes_no_empty_one() {
        let brk = || Strip {
            break_before: true,
            ..Strip::default()
        };
        let full = || Strip::blank(5.0);
        assert_eq!(
            paginate(vec![brk(), full(), brk(), brk(), full()], &frame()).len(),
            2
        );
        assert_eq!(paginate(vec![full(), brk()], &frame()).len(), 1);
        assert!(paginate(Vec::new(), &frame()).len() == 1);
    }
}
