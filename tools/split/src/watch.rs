//! The same module with a flag for each function: it is up once the function was called.

use crate::Fault;
use crate::module::{Module, cut};
use wasm_encoder::reencode::{Reencode, RoundtripReencoder};
use wasm_encoder::{
    CodeSection, ConstExpr, ExportKind, ExportSection, Function, GlobalSection, GlobalType,
    Instruction, RawSection, ValType,
};
use wasmparser::{Parser, Payload};

/// The module with a flag exported for each of its own functions, by `of `, its name and a
/// number after `#`.
pub fn watched(wasm: &[u8]) -> Result<Vec<u8>, Fault> {
    let module = Module::read(wasm)?;
    let first = module.globals.len() as u32;
    let flags = || (first..).zip(module.own());
    let mut same = RoundtripReencoder;
    let mut out = wasm_encoder::Module::new();
    for payload in Parser::new(0).parse_all(wasm) {
        match payload? {
            Payload::GlobalSection(section) => {
                let mut globals = GlobalSection::new();
                same.parse_global_section(&mut globals, section)?;
                for _ in module.own() {
                    let of = GlobalType {
                        val_type: ValType::I32,
                        mutable: true,
                        shared: false,
                    };
                    globals.global(of, &ConstExpr::i32_const(0));
                }
                out.section(&globals);
            }
            Payload::ExportSection(section) => {
                let mut exports = ExportSection::new();
                same.parse_export_section(&mut exports, section)?;
                for (flag, function) in flags() {
                    let name = format!("of {}#{flag}", module.name(function));
                    exports.export(&name, ExportKind::Global, flag);
                }
                out.section(&exports);
            }
            Payload::CodeSectionStart { .. } => {
                let mut code = CodeSection::new();
                for (flag, function) in flags() {
                    let mut watched = Function::new(module.locals(function)?);
                    watched.instruction(&Instruction::I32Const(1));
                    watched.instruction(&Instruction::GlobalSet(flag));
                    let mut steps = module.body(function).get_operators_reader()?;
                    while !steps.eof() {
                        watched.instruction(&same.instruction(steps.read()?)?);
                    }
                    code.function(&watched);
                }
                out.section(&code);
            }
            Payload::CodeSectionEntry(_) | Payload::CustomSection(_) => {}
            payload => {
                if let Some((id, range)) = payload.as_section() {
                    let data = cut(wasm, range);
                    out.section(&RawSection { id, data });
                }
            }
        }
    }
    Ok(out.finish())
}
