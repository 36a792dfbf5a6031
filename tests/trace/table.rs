//! `docs/trace.md`: every prior and likelihood in one readable table, written
//! from the model itself, and checked for sense.

use std::fmt::Write as _;

use coldsump::trace::{
    Basis, Check, Flat, FlatCheck, FlatMode, LevelControl, Lowers, Mode, Plant, cure,
};

const HEAD: &str = "\
# What the trace believes before it is told anything

Every number the trace reasons from, as the program has it. This page is
written by a test: `COLDSUMP_WRITE=1 cargo test --test trace table`; the test
also fails when a fault can't be proven or a check separates nothing.

Where a number comes from stands in its line. *Weibull*: scaled from published
Weibull lives of such parts (chance of failing within a year: AC motor 0.05,
solenoid valve 0.09, control valve 0.08, solid-state controller 0.17,
centrifugal pump 0.17, transducer 0.36), shared among the ways a part fails;
*insurer*: scaled from an equipment insurer's split of 2015, 60 to 70 %
electrical, 30 to 40 % mechanical; *judgement*: common practice, no source.
All chances of answers and all minutes are judgement: nobody has published
how often a strainer blow-off misleads. Directions follow from physics where
physics says: the loop's readings from the tower's heat balance, the fill
circuit's from its circuit. How a model whose priors and chances are all off
by a factor of two does is measured by `./dev bench trace`.

";

fn name<T: serde::Serialize>(of: T) -> String {
    let text = serde_json::to_string(&of).expect("a name");
    text.trim_matches('"').replace('-', " ")
}

/// One flat model that holds every mode and every check of some plant.
fn plants() -> Vec<Flat> {
    use LevelControl as L;
    let of = |level_control| Plant {
        level_control,
        cells: 2,
        tower_bypass: true,
        ..Plant::default()
    };
    let all = [
        L::ElectrodeRelay,
        L::FloatValve,
        L::FloatSwitch,
        L::Transmitter,
    ];
    all.map(|l| Flat::of(&of(l))).into()
}

fn mode_line(mode: Mode) -> String {
    let row = mode.row().expect("a row");
    let basis = match row.basis {
        Basis::Weibull => "Weibull",
        Basis::Insurer => "insurer",
        Basis::Judgement => "judgement",
    };
    let lowers = match row.lowers {
        Lowers::No => "no",
        Lowers::Sometimes => "sometimes",
        Lowers::Surely => "surely",
    };
    let proof: Vec<String> = cure(mode).confirm.iter().map(name).collect();
    format!(
        "| {} | {} | {} | {} | {} % | {lowers} | {} | {basis} | {} |",
        name(mode),
        name(row.group),
        name(row.place),
        row.weight,
        row.comes_and_goes,
        row.minutes,
        proof.join(", "),
    )
}

/// Chances of the answers as percent.
fn chances(row: &[f64; 3], answers: usize) -> String {
    let each = row[..answers].iter().map(|p| format!("{:.1}", 100.0 * p));
    each.collect::<Vec<_>>().join(" / ")
}

/// The lines of one check: a line for every effect.
fn check_lines(flats: &[Flat], check: Check) -> String {
    let mut page = String::new();
    let has = |f: &Flat| f.checks.iter().any(|c| c.check == check);
    let plants: Vec<&Flat> = flats.iter().filter(|f| has(f)).collect();
    let of = |f: &Flat| -> FlatCheck {
        f.checks
            .iter()
            .find(|c| c.check == check)
            .expect("the check")
            .clone()
    };
    let row = of(plants[0]);
    let answers: Vec<String> = check.answers().iter().map(name).collect();
    writeln!(
        page,
        "| **{}** {}, {:.0} min{} | {} | | |",
        name(check),
        name(check.place()),
        check.minutes(),
        if check.disturbs() { ", disturbs" } else { "" },
        answers.join(" / "),
    )
    .expect("text");
    for effect in 0..row.full.len() {
        let mut who: Vec<String> = Vec::new();
        for mode in Mode::ALL {
            let at = |f: &&Flat| {
                let place = f.modes.iter().position(|m| m.mode == mode)?;
                Some(of(f).effects[place])
            };
            let Some((acting, quiet)) = plants.iter().find_map(at) else {
                continue;
            };
            let effect = effect as u8;
            match (acting == effect, quiet == effect) {
                (true, true) if effect > 0 => who.push(format!("{}, also while quiet", name(mode))),
                (true, false) => who.push(name(mode)),
                (false, true) if effect > 0 => who.push(format!("{} while quiet", name(mode))),
                _ => {}
            }
        }
        let who = if effect == 0 {
            "none of these".to_owned()
        } else {
            who.join("; ")
        };
        let low = chances(&row.low[effect], row.answers);
        let full = chances(&row.full[effect], row.answers);
        let low = if low == full {
            "the same".to_owned()
        } else {
            low
        };
        writeln!(page, "| {who} | {full} | {low} | judgement |").expect("text");
    }
    page
}

fn page() -> String {
    let flats = plants();
    let mut page = HEAD.to_owned();
    page += "## Faults\n\nWeight: relative to all calls for high head, about per thousand. Comes and goes: part\n\
        of its cases. The proof: the check that shows it, best first.\n\n\
        | fault | part | place | weight | comes and goes | empties the basin | minutes to mend | source | proof |\n\
        |---|---|---|---|---|---|---|---|---|\n";
    for mode in Mode::ALL {
        page += &mode_line(mode);
        page.push('\n');
    }
    let f = &flats[0];
    let percent = |p: f64| format!("{:.1} %", 100.0 * p);
    page += "\n## What holds for all\n\nAll judgement.\n\n| what | chance |\n|---|---|\n";
    for (what, p) in [
        ("a second fault, against its own share", f.company),
        ("the same when it is one machine's own", f.company_own),
        (
            "nothing wrong any more, where the symptoms allow it",
            f.nothing,
        ),
        ("one that comes and goes acts as found", f.acts[0]),
        ("... after water was let in", f.acts[1]),
        ("... while tested", f.acts[2]),
        ("... changes its mind for one check", f.flicker),
        ("a correction did not take", f.residue),
        (
            "the basin kept its level with nothing to empty it",
            f.stays_full,
        ),
        ("a check taken again only repeats itself", f.copied),
    ] {
        writeln!(page, "| {what} | {} |", percent(p)).expect("text");
    }
    page += "\n## Checks\n\nChances of the answers in percent, in the order named, by what is wrong. Of several\n\
        faults the one lowest in a check's list speaks.\n\n\
        | who | over a full basin | over a low one | source |\n|---|---|---|---|\n";
    for check in Check::ALL {
        page += &check_lines(&flats, check);
    }
    page
}

#[test]
fn the_table_in_the_docs_is_the_model() {
    let page = page();
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/docs/trace.md");
    if std::env::var_os("COLDSUMP_WRITE").is_some() {
        std::fs::write(file, &page).expect("docs/trace.md is written");
    }
    let kept = std::fs::read_to_string(file).expect("docs/trace.md");
    assert!(kept == page, "write it anew as its own page says");
}

/// Every fault can be proven on every plant that can have it: one of its
/// proofs is there and says something at least seven times likelier with it.
#[test]
fn the_table_lets_every_fault_be_proven() {
    for flat in plants() {
        for (place, FlatMode { mode, .. }) in flat.modes.iter().enumerate() {
            let proof = cure(*mode).confirm;
            let here = flat.checks.iter().filter(|c| proof.contains(&c.check));
            let ratio = |c: &FlatCheck| {
                let effect = usize::from(c.effects[place].0);
                let rows = [&c.full, &c.low].into_iter();
                rows.flat_map(|r| {
                    (0..c.answers)
                        .map(|a| r[effect][a] / r[0][a])
                        .collect::<Vec<_>>()
                })
                .fold(0.0, f64::max)
            };
            let best = here.map(ratio).fold(0.0, f64::max);
            assert!(best >= 7.0, "{mode:?}: {best}");
        }
    }
}

/// Every two faults are told apart by some check that a plant with both has,
/// acting or quiet, by more than a little.
#[test]
fn the_table_tells_every_two_faults_apart() {
    for flat in plants() {
        for a in 0..flat.modes.len() {
            for b in 0..a {
                let apart = |c: &FlatCheck| {
                    let [x, y] = [a, b].map(|m| usize::from(c.effects[m].0));
                    let of =
                        |r: &Vec<[f64; 3]>| (0..3).map(|k| (r[x][k] - r[y][k]).abs()).sum::<f64>();
                    of(&c.full).max(of(&c.low)) / 2.0
                };
                let best = flat.checks.iter().map(apart).fold(0.0, f64::max);
                assert!(
                    best > 0.5,
                    "{:?} {:?}: {best}",
                    flat.modes[a].mode,
                    flat.modes[b].mode
                );
            }
        }
    }
}
