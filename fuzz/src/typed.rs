//! Typed quantities.

use coldsump::quantity::{Bounds, Kind, Refusal, System, Unit, Value, as_typed, read, show};
use coldsump::words::{Tongue, Words};

/// The first byte picks the kind, the second the unit of a bare number and the
/// bounds; the rest is what was typed.
///
/// # Panics
/// When a value taken is not finite, is out of bounds or of another kind, does
/// not come back from what the screen writes into the field, or when a refusal
/// has no words.
pub fn holds(data: &[u8]) {
    let [kind, how, typed @ ..] = data else {
        return;
    };
    let kind = Kind::ALL[usize::from(*kind) % Kind::ALL.len()];
    let units: Vec<Unit> = Unit::ALL
        .iter()
        .copied()
        .filter(|u| u.kind_fits(kind))
        .collect();
    let bare = units[usize::from(how >> 1) % units.len()];
    let bounds = match how & 1 {
        0 => Bounds::usual(kind),
        _ => Bounds::ANY,
    };
    let typed = super::text(typed);
    match read(&typed, kind, bare, bounds) {
        Ok(taken) => {
            let Value { kind: of, si } = taken.value;
            assert!(si.is_finite() && bounds.contains(si), "{typed:?}: {si}");
            assert!(
                of == kind && taken.unit.kind_fits(kind),
                "{typed:?}: {of:?}"
            );
            assert!(!taken.assumed_unit || taken.unit == bare);
            assert!(kind != Kind::Temperature || si >= -1e-9, "{typed:?}: {si}");
            written_again(taken.value, taken.unit);
            for system in [System::Us, System::Si] {
                let shown = show(taken.value, system).to_string();
                assert!(!shown.contains("inf") && !shown.contains("NaN"), "{shown}");
                // What the screen fills in can be read.
                let filled = as_typed(taken.value, taken.unit, system);
                let again = read(&filled, kind, taken.unit, Bounds::ANY);
                let long = filled.len() > 64;
                let unsure = matches!(again, Err(Refusal::Ambiguous { .. }));
                let cold = matches!(again, Err(Refusal::BelowAbsoluteZero { .. }));
                assert!(
                    long || unsure || cold || again.is_ok(),
                    "{filled:?}: {again:?}"
                );
            }
        }
        Err(refusal) => {
            let quotes = match &refusal {
                Refusal::NotANumber { near } | Refusal::UnknownUnit { unit: near } => near,
                _ => "",
            };
            assert!(quotes.chars().count() <= 24, "{quotes:?}");
            for tongue in Tongue::ALL {
                for system in [System::Us, System::Si] {
                    let said = Words(tongue).refusal(&refusal, kind, system);
                    let quiet = matches!(refusal, Refusal::Empty);
                    assert!(quiet || !said.trim().is_empty(), "{refusal:?}");
                    assert!(quotes.contains("NaN") || !said.contains("NaN"), "{said}");
                }
            }
        }
    }
}

/// The exact number with its unit reads back as the same value.
fn written_again(value: Value, unit: Unit) {
    let exact = format!("{} {}", unit.from_si(value.si), unit.symbol());
    if exact.len() > 64 {
        return;
    }
    let again = read(&exact, value.kind, unit, Bounds::ANY);
    // Rounding may carry a value a hair below absolute zero.
    if let Err(Refusal::BelowAbsoluteZero { si }) = again {
        assert!(si > -1e-6, "{exact:?}: {si}");
        return;
    }
    let si = again
        .unwrap_or_else(|why| panic!("{exact:?}: {why:?}"))
        .value
        .si;
    let near = 1e-9 * value.si.abs().max(1e-12);
    // Units with a zero of their own (°F, psig) round at the size of that zero.
    let zero = 1e-12 * unit.to_si(0.0).abs().max(1e-300);
    assert!(
        (si - value.si).abs() <= near + zero,
        "{exact:?}: {} then {si}",
        value.si
    );
}
