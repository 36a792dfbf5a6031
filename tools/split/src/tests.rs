//! A small module parted, and both parts run by Node.

use crate::part::{Parts, parted};
use std::borrow::Cow;
use std::process::Command;
use wasm_encoder::{
    CodeSection, ConstExpr, DataSection, ElementSection, Elements, ExportKind, ExportSection,
    Function, FunctionSection, GlobalSection, GlobalType, MemorySection, MemoryType, NameMap,
    NameSection, RefType, TableSection, TableType, TypeSection, ValType,
};

/// `main` = `kept` + `gone` + what stands in slot 1, which is `given`; `gone` gives
/// what `kept` does and one more, and counts that in a global. Each text is said by
/// where it stands.
fn whole() -> Vec<u8> {
    let mut out = wasm_encoder::Module::new();
    let mut types = TypeSection::new();
    types.ty().function([], [ValType::I32]);
    out.section(&types);
    let mut functions = FunctionSection::new();
    for _ in 0..4 {
        functions.function(0);
    }
    out.section(&functions);
    let mut tables = TableSection::new();
    for (element_type, minimum) in [(RefType::FUNCREF, 3), (RefType::EXTERNREF, 1)] {
        tables.table(TableType {
            element_type,
            table64: false,
            minimum,
            maximum: (minimum == 3).then_some(3),
            shared: false,
        });
    }
    out.section(&tables);
    let mut memories = MemorySection::new();
    memories.memory(MemoryType {
        minimum: 1,
        maximum: None,
        memory64: false,
        shared: false,
        page_size_log2: None,
    });
    out.section(&memories);
    let mut globals = GlobalSection::new();
    let counter = GlobalType {
        val_type: ValType::I32,
        mutable: true,
        shared: false,
    };
    globals.global(counter, &ConstExpr::i32_const(0));
    out.section(&globals);
    let mut exports = ExportSection::new();
    exports.export("main", ExportKind::Func, 0);
    exports.export("memory", ExportKind::Memory, 0);
    exports.export("count", ExportKind::Global, 0);
    out.section(&exports);
    let mut elements = ElementSection::new();
    let stand = Elements::Functions(Cow::Borrowed(&[3, 1]));
    elements.active(None, &ConstExpr::i32_const(1), stand);
    out.section(&elements);
    let mut code = CodeSection::new();
    let mut main = Function::new([]);
    main.instructions().call(1).call(2).i32_add();
    main.instructions()
        .i32_const(1)
        .call_indirect(0, 0)
        .i32_add()
        .end();
    code.function(&main);
    let mut kept = Function::new([]);
    kept.instructions().i32_const(10).end();
    code.function(&kept);
    let mut gone = Function::new([]);
    gone.instructions().i32_const(1).global_set(0);
    gone.instructions().call(1).i32_const(1).i32_add().end();
    code.function(&gone);
    let mut given = Function::new([]);
    given.instructions().i32_const(100).end();
    code.function(&given);
    out.section(&code);
    let mut data = DataSection::new();
    data.active(
        0,
        &ConstExpr::i32_const(8),
        [SAID, UNSAID].concat().into_bytes(),
    );
    out.section(&data);
    let mut names = NameMap::new();
    for (index, name) in (0..).zip(["main", "kept_3", "gone", "given"]) {
        names.append(index, name);
    }
    let mut section = NameSection::new();
    section.functions(&names);
    out.section(&section);
    out.finish()
}

const SAID: &str = "Said at once. ";
const UNSAID: &str = "Said only later, and long enough to be worth a segment.";

/// Makes the first part, does what `script` says with its exports and the bytes of
/// both parts, and answers what it writes.
fn run(parts: &Parts, script: &str) -> String {
    let bytes = |part: &[u8]| format!("new Uint8Array({part:?})");
    let script = format!(
        "const first = {}, rest = {};
         const f = new WebAssembly.Instance(new WebAssembly.Module(first)).exports;
         const join = () => new WebAssembly.Instance(new WebAssembly.Module(rest), {{ f }});
         const text = (at, n) => Buffer.from(f.memory.buffer, at, n).toString();
         {script}",
        bytes(&parts.first),
        bytes(&parts.rest)
    );
    let node = Command::new("node").args(["-e", &script]).output();
    let node = node.expect("node runs");
    assert!(
        node.status.success(),
        "{}",
        String::from_utf8_lossy(&node.stderr)
    );
    String::from_utf8_lossy(&node.stdout).trim().to_string()
}

#[test]
fn two_parts_do_what_the_whole_did() {
    let parts = parted(&whole(), |name| name == "kept", &[UNSAID.as_bytes()]);
    let parts = parts.expect("a module of a known kind");
    assert_eq!(parts.moved, UNSAID.len());
    let said = run(&parts, "join(); console.log(f.main(), f.count.value)");
    assert_eq!(said, "121 1");
    let n = SAID.len();
    let later = format!("join(); console.log(text({}, {}))", 8 + n, UNSAID.len());
    assert_eq!(run(&parts, &later), UNSAID);
}

#[test]
fn the_first_part_ends_at_what_it_lacks() {
    let parts = parted(&whole(), |name| name == "kept", &[UNSAID.as_bytes()]);
    let parts = parts.expect("a module of a known kind");
    let n = SAID.len();
    let now = format!(
        "try {{ f.main(); }} catch (e) {{ console.log(e instanceof WebAssembly.RuntimeError); }}
         console.log(text(8, {n}) + text({}, {}).replaceAll('\\0', '0'))",
        8 + n,
        UNSAID.len()
    );
    let zeros = "0".repeat(UNSAID.len());
    assert_eq!(run(&parts, &now), format!("true\n{SAID}{zeros}"));
}
