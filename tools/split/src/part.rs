//! One module parted in two.
//!
//! The first keeps the memory, the tables, the data and whatever it is told to keep; it
//! reaches a function of the rest through a slot of the table, which stands empty until
//! the rest is there. The rest imports what it needs from the first's exports, and fills
//! its slots as it is made.

use crate::Fault;
use crate::data::{Piece, taken_out};
use crate::module::Module;
use crate::shared::Shared;
use std::borrow::Cow;
use std::collections::{BTreeMap, HashMap, HashSet};
use wasm_encoder::reencode::{Reencode, RoundtripReencoder};
use wasm_encoder::{
    CodeSection, ConstExpr, DataSection, ElementSection, Elements, EntityType, ExportKind,
    ExportSection, Function, FunctionSection, GlobalSection, ImportSection, Instruction,
    MemorySection, RawSection, SectionId, TableSection,
};
use wasmparser::{ExternalKind, Operator};

/// What the rest calls the first.
const FIRST: &str = "f";

/// The two parts.
pub struct Parts {
    /// What is there from the start.
    pub first: Vec<u8>,
    /// What comes after.
    pub rest: Vec<u8>,
    /// How many bytes of text went there.
    pub moved: usize,
}

/// Parts a module: what is exported stays, and what `stays` says of; the texts `unsaid` go
/// with the rest.
pub fn parted(wasm: &[u8], stays: impl Fn(&str) -> bool, unsaid: &[&[u8]]) -> Result<Parts, Fault> {
    let module = Module::read(wasm)?;
    let exported: HashSet<u32> = module
        .exports
        .iter()
        .filter(|export| export.kind == ExternalKind::Func)
        .map(|export| export.index)
        .collect();
    let (first, rest): (Vec<u32>, Vec<u32>) = module
        .own()
        .partition(|function| exported.contains(function) || stays(&module.name(*function)));
    let shared = Shared::of(&module, &first, &rest)?;
    let mut here: Vec<u32> = rest.iter().chain(&shared.copies).copied().collect();
    here.sort_unstable(); // by name, as the build put them: alike stands by alike
    let (stay, go) = taken_out(&module.data, unsaid);
    Ok(Parts {
        first: first_part(&module, &first, &shared, &stay)?,
        rest: rest_part(&module, &here, &shared, &go)?,
        moved: go.iter().map(|(_, bytes)| bytes.len()).sum(),
    })
}

/// The new index of each function that a part knows.
type Renumbered = HashMap<u32, u32>;

/// A body with its functions (and globals) renumbered, calls into the rest made
/// through the table.
fn body(
    module: &Module,
    function: u32,
    functions: &Renumbered,
    globals: Option<&Renumbered>,
    slots: &BTreeMap<u32, u32>,
) -> Result<Function, Fault> {
    let mut same = RoundtripReencoder;
    let body = module.body(function);
    let mut out = Function::new(module.locals(function)?);
    let known = |index: u32| functions.get(&index).copied();
    let global = |index: u32| match globals {
        Some(globals) => globals.get(&index).copied().unwrap_or(index),
        None => index,
    };
    for step in body.get_operators_reader()? {
        match step? {
            Operator::Call { function_index } => match known(function_index) {
                Some(index) => out.instruction(&Instruction::Call(index)),
                None => out
                    .instruction(&Instruction::I32Const(slots[&function_index] as i32))
                    .instruction(&Instruction::CallIndirect {
                        type_index: module.type_of(function_index),
                        table_index: 0,
                    }),
            },
            Operator::RefFunc { .. } => return Err(Fault::new("a reference to a function")),
            Operator::GlobalGet { global_index } => {
                out.instruction(&Instruction::GlobalGet(global(global_index)))
            }
            Operator::GlobalSet { global_index } => {
                out.instruction(&Instruction::GlobalSet(global(global_index)))
            }
            step => out.instruction(&same.instruction(step)?),
        };
    }
    Ok(out)
}

fn raw<'a>(id: SectionId, data: &'a [u8]) -> RawSection<'a> {
    RawSection { id: id as u8, data }
}

fn first_part(
    module: &Module,
    first: &[u32],
    shared: &Shared,
    data: &[Piece],
) -> Result<Vec<u8>, Fault> {
    let mut same = RoundtripReencoder;
    let mut out = wasm_encoder::Module::new();
    let numbers: Renumbered = (0..module.imported())
        .chain(first.iter().copied())
        .zip(0..)
        .collect();
    // Stands in the slots of the rest: to call it is the program's end.
    let absent = numbers.len() as u32;

    out.section(&raw(SectionId::Type, module.types));
    let mut imports = ImportSection::new();
    for (from, name, of) in &module.imports {
        imports.import(from, name, EntityType::Function(*of));
    }
    out.section(&imports);

    let mut functions = FunctionSection::new();
    for function in first {
        functions.function(module.type_of(*function));
    }
    functions.function(module.type_of(first[0]));
    out.section(&functions);

    let mut tables = TableSection::new();
    for n in 0..module.tables.len() {
        tables.table(same.table_type(shared.table_of(module, n))?);
    }
    out.section(&tables);
    let mut memories = MemorySection::new();
    memories.memory(same.memory_type(module.memory)?);
    out.section(&memories);

    let mut globals = GlobalSection::new();
    for (of, begins) in &module.globals {
        globals.global(same.global_type(*of)?, &same.const_expr(begins.clone())?);
    }
    out.section(&globals);

    let mut exports = ExportSection::new();
    for export in &module.exports {
        let index = match export.kind {
            ExternalKind::Func => numbers[&export.index],
            _ => export.index,
        };
        exports.export(export.name, same.export_kind(export.kind)?, index);
    }
    for (name, kind, index) in shared.names() {
        let index = match kind {
            ExportKind::Func => numbers[&index],
            _ => index,
        };
        exports.export(&name, kind, index);
    }
    out.section(&exports);

    out.section(&standing(&module.slots, |function| {
        numbers.get(&function).copied().unwrap_or(absent)
    }));

    let mut code = CodeSection::new();
    for function in first {
        code.function(&body(module, *function, &numbers, None, &shared.slots)?);
    }
    let mut end = Function::new([]);
    end.instruction(&Instruction::Unreachable);
    end.instruction(&Instruction::End);
    code.function(&end);
    out.section(&code);
    out.section(&laid_down(data));
    Ok(out.finish())
}

fn rest_part(
    module: &Module,
    rest: &[u32],
    shared: &Shared,
    data: &[Piece],
) -> Result<Vec<u8>, Fault> {
    let mut same = RoundtripReencoder;
    let mut out = wasm_encoder::Module::new();
    out.section(&raw(SectionId::Type, module.types));

    let mut imports = ImportSection::new();
    let mut numbers = Renumbered::new();
    let mut globals = Renumbered::new();
    for (name, kind, index) in shared.names() {
        let of = match kind {
            ExportKind::Func => {
                numbers.insert(index, numbers.len() as u32);
                EntityType::Function(module.type_of(index))
            }
            ExportKind::Global => {
                globals.insert(index, globals.len() as u32);
                EntityType::Global(same.global_type(module.globals[index as usize].0)?)
            }
            ExportKind::Table => {
                EntityType::Table(same.table_type(shared.table_of(module, index as usize))?)
            }
            _ => EntityType::Memory(same.memory_type(module.memory)?),
        };
        imports.import(FIRST, &name, of);
    }
    out.section(&imports);
    for function in rest {
        numbers.insert(*function, numbers.len() as u32);
    }

    let mut functions = FunctionSection::new();
    for function in rest {
        functions.function(module.type_of(*function));
    }
    out.section(&functions);

    let mut slots: Vec<(u32, u32)> = module
        .slots
        .iter()
        .copied()
        .filter(|(_, function)| shared.rest.contains(function))
        .chain(
            shared
                .slots
                .iter()
                .map(|(function, slot)| (*slot, *function))
                .filter(|(slot, _)| *slot >= module.tables[0].initial as u32),
        )
        .collect();
    slots.sort_unstable();
    out.section(&standing(&slots, |function| numbers[&function]));

    let mut code = CodeSection::new();
    for function in rest {
        code.function(&body(
            module,
            *function,
            &numbers,
            Some(&globals),
            &BTreeMap::new(),
        )?);
    }
    out.section(&code);
    out.section(&laid_down(data));
    Ok(out.finish())
}

fn laid_down(pieces: &[Piece]) -> DataSection {
    let mut data = DataSection::new();
    for (at, bytes) in pieces {
        data.active(0, &ConstExpr::i32_const(*at as i32), bytes.iter().copied());
    }
    data
}

/// What stands in the first table's slots, each function by its new index.
fn standing(slots: &[(u32, u32)], number: impl Fn(u32) -> u32) -> ElementSection {
    let mut elements = ElementSection::new();
    for (at, run) in runs(slots) {
        let run = run.into_iter().map(&number).collect();
        elements.active(
            None,
            &ConstExpr::i32_const(at),
            Elements::Functions(Cow::Owned(run)),
        );
    }
    elements
}

/// Slots that follow each other, with the first's place.
fn runs(slots: &[(u32, u32)]) -> Vec<(i32, Vec<u32>)> {
    let mut runs: Vec<(i32, Vec<u32>)> = Vec::new();
    for (slot, function) in slots {
        match runs.last_mut() {
            Some((at, run)) if *at as usize + run.len() == *slot as usize => run.push(*function),
            _ => runs.push((*slot as i32, vec![*function])),
        }
    }
    runs
}
