//! The native runner: `coldsump-bench FOLDER`, where the folder holds
//! `TASK.txt` with one number a line. For each line `TASK PASSES` on stdin it
//! answers one line: nanoseconds for all the passes, then the answers.

use std::collections::HashMap;
use std::hint::black_box;
use std::io::{self, BufRead, Write};
use std::time::Instant;

fn main() -> io::Result<()> {
    let folder = std::env::args().nth(1).expect("the folder of inputs");
    let read = |task: &str| -> io::Result<Vec<f64>> {
        let text = std::fs::read_to_string(format!("{folder}/{task}.txt"))?;
        Ok(text.lines().map(|l| l.parse().expect("a number")).collect())
    };
    type Sum = fn(&[f64]) -> Vec<f64>;
    let mut tasks: HashMap<&str, (Sum, Vec<f64>)> = HashMap::new();
    for (task, sum) in [
        ("wet-bulb", coldsump_bench::wet_bulbs as Sum),
        ("tower", coldsump_bench::leaving_water),
        ("saturation", coldsump_bench::saturation),
    ] {
        tasks.insert(task, (sum, read(task)?));
    }
    for line in io::stdin().lock().lines() {
        let line = line?;
        let (task, passes) = line.split_once(' ').expect("a task and its passes");
        let passes: u32 = passes.parse().expect("how many passes");
        let (sum, inputs) = &tasks[task];
        let begun = Instant::now();
        for _ in 0..passes {
            black_box(sum(black_box(inputs)));
        }
        let taken = begun.elapsed().as_nanos();
        let answers: Vec<String> = sum(inputs).iter().map(f64::to_string).collect();
        println!("{taken} {}", answers.join(" "));
        io::stdout().flush()?;
    }
    Ok(())
}
