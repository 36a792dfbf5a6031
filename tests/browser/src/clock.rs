//! A page's clocks, set forward by a test.

use crate::phone::Phone;

/// The wall's clock and the steady one of Chromium's pages, set forward together.
#[derive(Debug)]
pub struct Clock {
    ahead_ms: u64,
}

impl Clock {
    /// Puts it under every page opened from now on.
    ///
    /// # Panics
    /// When the browser refuses it.
    pub async fn under(phone: &Phone) -> Self {
        phone
            .on_new_page(
                "{
                   const wall = Date.now.bind(Date), steady = performance.now.bind(performance);
                   window.__ahead = 0;
                   Date.now = () => wall() + window.__ahead;
                   performance.now = () => steady() + window.__ahead;
                 }",
            )
            .await;
        Self { ahead_ms: 0 }
    }

    /// Lets this time pass in the page that is open; one opened later starts at
    /// the true time again.
    ///
    /// # Panics
    /// When the page does not answer.
    pub async fn pass(&mut self, phone: &Phone, seconds: u64) {
        self.ahead_ms += seconds * 1000;
        phone
            .js(&format!("window.__ahead = {}", self.ahead_ms))
            .await;
    }
}
