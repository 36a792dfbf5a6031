//! A module as the build makes it, taken to pieces.

use crate::Fault;
use crate::data::Piece;
use std::collections::HashMap;
use wasm_encoder::ValType;
use wasm_encoder::reencode::{Reencode, RoundtripReencoder};
use wasmparser::{
    ConstExpr, DataKind, ElementItems, ElementKind, Export, FunctionBody, GlobalType, Import,
    KnownCustom, MemoryType, Name, Operator, Parser, Payload, TableType, TypeRef,
};

/// The sections of a module that has one memory, whose functions stand in active
/// segments of its first table, and which starts nothing by itself.
pub struct Module<'a> {
    /// The type section's bytes: both parts keep it whole.
    pub types: &'a [u8],
    /// What it imports, functions alone.
    pub imports: Vec<(&'a str, &'a str, u32)>,
    /// The type of each function of its own.
    pub functions: Vec<u32>,
    /// Its tables.
    pub tables: Vec<TableType>,
    /// Its memory.
    pub memory: MemoryType,
    /// Its globals, with the bytes of what they begin at.
    pub globals: Vec<(GlobalType, ConstExpr<'a>)>,
    /// What it exports.
    pub exports: Vec<Export<'a>>,
    /// Which function stands in which slot of the first table.
    pub slots: Vec<(u32, u32)>,
    /// The bodies of its own functions.
    pub bodies: Vec<FunctionBody<'a>>,
    /// What its memory begins with.
    pub data: Vec<Piece<'a>>,
    /// What its functions are called, by index.
    names: HashMap<u32, &'a str>,
}

impl<'a> Module<'a> {
    /// Reads a module; the fault says what in it this tool does not know.
    pub fn read(wasm: &'a [u8]) -> Result<Self, Fault> {
        let mut module = Module {
            types: &[],
            imports: Vec::new(),
            functions: Vec::new(),
            tables: Vec::new(),
            memory: MemoryType {
                memory64: false,
                shared: false,
                initial: 0,
                maximum: None,
                page_size_log2: None,
            },
            globals: Vec::new(),
            exports: Vec::new(),
            slots: Vec::new(),
            bodies: Vec::new(),
            data: Vec::new(),
            names: HashMap::new(),
        };
        for payload in Parser::new(0).parse_all(wasm) {
            module.take(wasm, payload?)?;
        }
        Ok(module)
    }

    fn take(&mut self, wasm: &'a [u8], payload: Payload<'a>) -> Result<(), Fault> {
        match payload {
            Payload::TypeSection(section) => self.types = cut(wasm, section.range()),
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    self.import(import?)?;
                }
            }
            Payload::FunctionSection(section) => {
                self.functions = section.into_iter().collect::<Result<_, _>>()?;
            }
            Payload::TableSection(section) => {
                for table in section {
                    self.tables.push(table?.ty);
                }
            }
            Payload::MemorySection(section) => {
                for memory in section {
                    self.memory = memory?;
                }
            }
            Payload::GlobalSection(section) => {
                for global in section {
                    let global = global?;
                    self.globals.push((global.ty, global.init_expr));
                }
            }
            Payload::ExportSection(section) => {
                self.exports = section.into_iter().collect::<Result<_, _>>()?;
            }
            Payload::ElementSection(section) => {
                for element in section {
                    self.element(element?)?;
                }
            }
            Payload::CodeSectionEntry(body) => self.bodies.push(body),
            Payload::DataSection(section) => {
                for data in section {
                    let data = data?;
                    let DataKind::Active {
                        memory_index: 0,
                        offset_expr,
                    } = data.kind
                    else {
                        return Err(Fault::new("data that is not laid down at the start"));
                    };
                    self.data.push((constant(&offset_expr)?, data.data));
                }
            }
            Payload::CustomSection(section) => {
                if let KnownCustom::Name(names) = section.as_known() {
                    for name in names {
                        if let Name::Function(functions) = name? {
                            for function in functions {
                                let function = function?;
                                self.names.insert(function.index, function.name);
                            }
                        }
                    }
                }
            }
            // The count is for a code that lays down data by itself: none is made here,
            // and a part that did would not pass as valid.
            Payload::DataCountSection { .. }
            | Payload::Version { .. }
            | Payload::CodeSectionStart { .. }
            | Payload::End(_) => {}
            other => return Err(Fault::new(format!("a section not known here: {other:?}"))),
        }
        Ok(())
    }

    fn import(&mut self, import: Import<'a>) -> Result<(), Fault> {
        let TypeRef::Func(of) = import.ty else {
            return Err(Fault::new(format!(
                "an import that is no function: {import:?}"
            )));
        };
        self.imports.push((import.module, import.name, of));
        Ok(())
    }

    fn element(&mut self, element: wasmparser::Element<'a>) -> Result<(), Fault> {
        let ElementKind::Active {
            table_index: None | Some(0),
            offset_expr,
        } = element.kind
        else {
            return Err(Fault::new("a segment that is not the first table's own"));
        };
        let ElementItems::Functions(functions) = element.items else {
            return Err(Fault::new("a segment of expressions"));
        };
        for (slot, function) in (constant(&offset_expr)?..).zip(functions) {
            self.slots.push((slot, function?));
        }
        Ok(())
    }

    /// How many functions it imports: its own are counted from there.
    pub fn imported(&self) -> u32 {
        self.imports.len() as u32
    }

    /// The indices of its own functions.
    pub fn own(&self) -> std::ops::Range<u32> {
        self.imported()..self.imported() + self.functions.len() as u32
    }

    /// The body of one of its own functions.
    pub fn body(&self, function: u32) -> &FunctionBody<'a> {
        &self.bodies[(function - self.imported()) as usize]
    }

    /// What one of its own functions keeps by name: how many, and of which type.
    pub fn locals(&self, function: u32) -> Result<Vec<(u32, ValType)>, Fault> {
        let locals = self.body(function).get_locals_reader()?;
        locals
            .into_iter()
            .map(|local| {
                let (count, of) = local?;
                Ok((count, RoundtripReencoder.val_type(of)?))
            })
            .collect()
    }

    /// The type of a function.
    pub fn type_of(&self, function: u32) -> u32 {
        match self.imports.get(function as usize) {
            Some((_, _, of)) => *of,
            None => self.functions[(function - self.imported()) as usize],
        }
    }

    /// What a function is called, less what differs from one machine to another (a
    /// crate's number) and what only tells it from others of its name; the empty name
    /// where it has none.
    pub fn name(&self, function: u32) -> String {
        plain(self.names.get(&function).copied().unwrap_or_default())
    }
}

/// What a segment begins at.
fn constant(begins: &ConstExpr) -> Result<u32, Fault> {
    match begins.get_operators_reader().read()? {
        Operator::I32Const { value } => Ok(value as u32),
        other => Err(Fault::new(format!("a segment begins at {other:?}"))),
    }
}

/// The bytes of a section.
pub fn cut(wasm: &[u8], range: std::ops::Range<u64>) -> &[u8] {
    &wasm[range.start as usize..range.end as usize]
}

/// `core[27cd0353e63fa9bc]::fmt::write_12` as `core::fmt::write`.
fn plain(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    let mut rest = name;
    while let Some(at) = rest.find('[') {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let inside = rest[1..].split(']').next().unwrap_or_default();
        if inside.len() >= 14 && inside.chars().all(|c| c.is_ascii_hexdigit()) {
            rest = &rest[inside.len() + 2..];
        } else {
            out.push('[');
            rest = &rest[1..];
        }
    }
    out.push_str(rest);
    // What the compiler and the optimizer add when two have one name.
    loop {
        let short = out.trim_end_matches(|c: char| c.is_ascii_digit());
        let less = short.len() < out.len();
        match short.strip_suffix(['_', '.']) {
            Some(short) if less && !short.is_empty() => out.truncate(short.len()),
            _ => match out.strip_suffix(']').and_then(|out| out.rsplit_once('[')) {
                Some((short, n)) if n.chars().all(|c| c.is_ascii_digit()) => {
                    out.truncate(short.len());
                }
                _ => return out,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn a_name_without_its_numbers() {
        for (name, plainly) in [
            ("core[27cd0353e63fa9bc]::fmt::write_12", "core::fmt::write"),
            ("<&[u8] as a[336d38f45123d080]::B>::c", "<&[u8] as a::B>::c"),
            ("a::{closure#1}", "a::{closure#1}"),
            ("a::of2", "a::of2"),
            ("_12", "_12"),
            ("a::allocate.74", "a::allocate"),
            ("a::with_capacity_in[1]_2", "a::with_capacity_in"),
        ] {
            assert_eq!(plain(name), plainly);
        }
    }
}
