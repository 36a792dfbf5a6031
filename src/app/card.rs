//! Who does the visits: typed in the settings, kept as it is typed, printed
//! on every report.

use crate::app::ledger::ledger;
use crate::app::prefs::prefs;
use crate::quantity::{System, Unit, decimal};
use crate::record::paperwork::Card;

/// Keys of the fields in the settings.
pub const KEYS: [&str; 4] = ["card name", "card firm", "card licence", "card phone"];
/// Key of the price's field.
pub const PRICE: &str = "card price";

fn typed(key: &str) -> String {
    let text = ledger().text(&format!("draft {key}"));
    text.unwrap_or_default().trim().to_owned()
}

/// A sign of money and a price as typed: `$12.40`, `4,10 €`.
pub fn price(text: &str) -> Option<(String, f64)> {
    let digit = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
    let number: String = text.chars().filter(|c| digit(*c)).collect();
    let sign: String = text.chars().filter(|c| !digit(*c)).collect();
    let number = decimal(&number)?;
    (number > 0.0 && number < 10_000.0).then(|| (sign.trim().to_owned(), number))
}

/// The card as it stands in the settings.
pub fn card() -> Card {
    let [name, firm, licence, phone] = KEYS.map(typed);
    let price = price(&typed(PRICE));
    let measure = match prefs().system.get_untracked() {
        System::Us => 1000.0 * Unit::Gallon.to_si(1.0),
        System::Si => 1.0,
    };
    let (currency, water_price) = price
        .map(|(sign, price)| (sign, Some(price / measure)))
        .unwrap_or_default();
    Card {
        name,
        firm,
        licence,
        phone,
        currency,
        water_price,
    }
}
