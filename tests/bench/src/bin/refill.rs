//! `./dev bench refill [RUNS]`: the refill test over simulated basins, printed.
//! Fails where a figure leaves its bounds.

#[path = "../../../refill/basin.rs"]
#[allow(dead_code)]
mod basin;
#[path = "../../../refill/monte.rs"]
mod monte;

use monte::Lot;

fn main() {
    let runs = std::env::args()
        .nth(1)
        .map_or(20_000, |n| n.parse().expect("how many runs"));
    let mixed = monte::by_kind(runs, 1);
    let short = monte::below_need(runs / 4, 2);
    let others = monte::others(runs / 4, 3);
    print(
        "Shares of 95 % intervals that held the truth, in percent",
        &mixed,
    );
    print("Rough water throughout", &monte::rough(runs / 4, 4));
    print("Valves that give less than is needed", &short);
    print(
        "A sound chain, and a valve that passes after it shut",
        &others,
    );
    println!("\nWater after the shut-off, in percent of the runs\n");
    println!("{:<30}{:>10}{:>12}", "", "told", "ruled out");
    for lot in &others {
        let share = |n: usize| 100.0 * n as f64 / lot.runs.max(1) as f64;
        let (told, out) = (share(lot.drips), share(lot.ruled_out));
        println!("{:<30}{told:>10.1}{out:>12.1}", lot.name);
    }
    let all = &mixed[0];
    let bias = all.bias_percent();
    let mut bad: Vec<String> = all
        .covers()
        .into_iter()
        .filter(|(_, c)| !(93.0..=97.0).contains(&c.percent()))
        .map(|(name, c)| format!("{name} held in {:.1} %", c.percent()))
        .collect();
    let told = 100.0 * others[2].drips as f64 / others[2].runs.max(1) as f64;
    if told < 90.0 {
        bad.push(format!(
            "a leak of a tenth told in {told:.1} % of the tests watched as planned"
        ));
    }
    if bias.abs() >= 1.0 {
        bad.push(format!("bias {bias:.2} %"));
    }
    if all.turns.percent() < 99.0 {
        bad.push(format!(
            "turns within a reading {:.1} %",
            all.turns.percent()
        ));
    }
    bad.extend(
        short
            .iter()
            .filter(|lot| lot.passed_percent() > 2.5)
            .map(|lot| format!("{}: {:.1} % passed", lot.name, lot.passed_percent())),
    );
    let passed = short.iter().map(Lot::passed_percent).fold(0.0, f64::max);
    println!("\nBias {bias:.2} %, most passes of a valve below need {passed:.1} %.");
    if !bad.is_empty() {
        println!("Out of bounds: {}", bad.join("; "));
        std::process::exit(1);
    }
}

/// One line a lot, in columns.
fn print(title: &str, lots: &[Lot]) {
    println!("\n{title}\n");
    print!("{:<30}{:>6}{:>8}{:>7}", "", "runs", "bias %", "+/- %");
    for (name, _) in lots[0].covers() {
        print!("{name:>13}");
    }
    println!("{:>7}   pass watch fail open", "turns");
    for lot in lots {
        let (bias, width) = (lot.bias_percent(), lot.width_percent());
        print!("{:<30}{:>6}{bias:>8.2}{width:>7.1}", lot.name, lot.runs);
        for (_, cover) in lot.covers() {
            print!("{:>13.1}", cover.percent());
        }
        let [pass, watch, fail, open] = lot.verdicts;
        println!(
            "{:>7.1}   {pass:>4} {watch:>5} {fail:>4} {open:>4}",
            lot.turns.percent()
        );
    }
}
