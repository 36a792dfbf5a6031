//! The face: shell, screens, widgets.

/// Mounts the application on the page.
pub fn start() {}
