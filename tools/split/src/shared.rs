//! What the two parts of a module have of each other.

use crate::Fault;
use crate::module::Module;
use std::collections::{BTreeMap, BTreeSet, HashSet};
use wasm_encoder::ExportKind;
use wasmparser::{Operator, TableType};

/// A body of so many bytes is copied, and these, whatever they weigh: in a search over
/// thousands of lines the crossings made a third of the time.
const SHORT: u64 = 80;
const BUSY: [&str; 3] = ["dlmalloc", "memcmp", "core::str::"];

/// What lies between the parts.
pub struct Shared {
    /// Functions of the rest.
    pub rest: HashSet<u32>,
    /// Where the first finds those of them that it calls or gives away.
    pub slots: BTreeMap<u32, u32>,
    /// How many slots the first table has.
    table: u32,
    /// Functions of the first that the rest has too: a call from one part into the other
    /// takes longer than one within, and short ones are called most.
    pub copies: BTreeSet<u32>,
    /// Which functions the rest takes from the first.
    functions: BTreeSet<u32>,
    /// And which globals.
    globals: BTreeSet<u32>,
}

impl Shared {
    /// What lies between a module's functions, parted so.
    pub fn of(module: &Module, first: &[u32], rest: &[u32]) -> Result<Self, Fault> {
        let mut shared = Shared {
            rest: rest.iter().copied().collect(),
            slots: BTreeMap::new(),
            copies: BTreeSet::new(),
            table: module.tables[0].initial as u32,
            functions: BTreeSet::new(),
            globals: BTreeSet::new(),
        };
        for (slot, function) in &module.slots {
            if shared.rest.contains(function) {
                shared.slots.insert(*function, *slot);
            }
        }
        for function in first {
            for callee in calls(module, *function)? {
                let next = shared.table;
                if shared.rest.contains(&callee)
                    && *shared.slots.entry(callee).or_insert(next) == next
                {
                    shared.table += 1;
                }
            }
        }
        let mut look: Vec<u32> = rest.to_vec();
        while let Some(function) = look.pop() {
            for callee in calls(module, function)? {
                if !module.own().contains(&callee) {
                    continue;
                }
                let body = module.body(callee).range();
                let name = module.name(callee);
                let worth =
                    body.end - body.start <= SHORT || BUSY.iter().any(|busy| name.contains(busy));
                if worth && !shared.rest.contains(&callee) && shared.copies.insert(callee) {
                    look.push(callee);
                }
            }
        }
        let here: HashSet<u32> = shared.rest.iter().chain(&shared.copies).copied().collect();
        for function in &here {
            let foreign = calls(module, *function)?;
            (shared.functions).extend(foreign.into_iter().filter(|callee| !here.contains(callee)));
            for step in module.body(*function).get_operators_reader()? {
                if let Operator::GlobalGet { global_index } | Operator::GlobalSet { global_index } =
                    step?
                {
                    shared.globals.insert(global_index);
                }
            }
        }
        Ok(shared)
    }

    /// One of the tables, the first with its new slots.
    pub fn table_of(&self, module: &Module, n: usize) -> TableType {
        let mut table = module.tables[n];
        if n == 0 {
            table.initial = self.table.into();
            table.maximum = Some(self.table.into());
        }
        table
    }

    /// The names of what the rest takes, none that the build has given.
    pub fn names(&self) -> impl Iterator<Item = (String, ExportKind, u32)> {
        let tables = [
            (ExportKind::Table, 0),
            (ExportKind::Table, 1),
            (ExportKind::Memory, 0),
        ];
        let globals = self
            .globals
            .iter()
            .map(|global| (ExportKind::Global, *global));
        let functions = self
            .functions
            .iter()
            .map(|function| (ExportKind::Func, *function));
        (0..)
            .zip(tables.into_iter().chain(globals).chain(functions))
            .map(|(n, (kind, index))| (short(n), kind, index))
    }
}

/// `_0`, `_1`, ...: in as few letters as there are.
fn short(mut n: u32) -> String {
    let mut name = String::new();
    loop {
        name.insert(0, char::from_digit(n % 36, 36).unwrap_or('_'));
        n /= 36;
        if n == 0 {
            return format!("_{name}");
        }
    }
}

/// The functions that one calls.
fn calls(module: &Module, function: u32) -> Result<Vec<u32>, Fault> {
    let mut called = Vec::new();
    for step in module.body(function).get_operators_reader()? {
        if let Operator::Call { function_index } = step? {
            called.push(function_index);
        }
    }
    Ok(called)
}
