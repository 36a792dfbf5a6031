//! The table in `docs/accuracy.md` says what the grids say.

use crate::grid::Accuracy;

/// Every check against a reference grid, in the table's order.
fn all() -> Vec<Accuracy> {
    let mut all = Vec::new();
    all.extend(crate::air::accuracy());
    all.extend(crate::saturation::accuracy());
    all.extend(crate::refrigerant::accuracy());
    all.extend(crate::chemistry::accuracy());
    all.extend(crate::circuit_grid::accuracy());
    all.extend(crate::electrode::accuracy());
    all.extend(crate::tower_prediction::accuracy());
    all.extend(crate::tower_poppe::accuracy());
    all.extend(crate::piping::accuracy());
    all.extend(crate::drain::accuracy());
    all.extend(crate::loop_heat::accuracy());
    all
}

const HEAD: &str = "\
# How right the numbers are

Each line is a quantity worked out by Coldsump against a reference over a grid
of points: the worst error found, and the error a test allows. The grids and
the scripts that make them are in `tests/reference`; `./dev reference` makes
them again, and `./dev test` fails when a figure no longer reproduces. Published
worked examples and tables are checked beside them, in `tests/physics`, each
with its source.

This page is written by a test: `COLDSUMP_WRITE=1 cargo test --test physics accuracy`.

| quantity | reference | points | worst error | allowed |
|---|---|---|---|---|
";

#[test]
fn the_docs_table_is_what_the_grids_say() {
    let mut page = HEAD.to_owned();
    for accuracy in all() {
        page += &accuracy.held().line();
        page.push('\n');
    }
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/docs/accuracy.md");
    if std::env::var_os("COLDSUMP_WRITE").is_some() {
        std::fs::write(file, &page).expect("docs/accuracy.md is written");
    }
    let kept = std::fs::read_to_string(file).expect("docs/accuracy.md");
    assert_eq!(kept, page, "write it anew as its own page says");
}
