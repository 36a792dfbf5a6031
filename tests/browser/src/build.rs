//! The build under test, and copies of it that a test may change.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use tempfile::TempDir;

/// The project's top folder.
pub fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("tests/browser is two levels down")
        .to_owned()
}

/// A copy of the release build in a folder of its own; it goes with the value.
#[derive(Debug)]
pub struct Build {
    folder: TempDir,
}

impl Build {
    /// Copies `dist/`.
    ///
    /// # Panics
    /// When there is no release build.
    pub fn copy() -> Self {
        let folder = TempDir::new().expect("a temporary folder");
        copy_folder(&project().join("dist"), folder.path());
        Self { folder }
    }

    /// Copies `dist/` and gives its page clocks that a test moves and a watch
    /// on what goes wrong (`under_test.js`), the same in every engine.
    ///
    /// # Panics
    /// As [`Build::copy`], and when the page has no title.
    pub fn watched() -> Self {
        let script = project().join("tests/browser/under_test.js");
        Self::over(&fs::read_to_string(script).expect("the script"))
    }

    /// Copies `dist/` and lets a script run in its page before the program's own,
    /// in any engine.
    ///
    /// # Panics
    /// As [`Build::watched`].
    pub fn over(script: &str) -> Self {
        let build = Self::copy();
        build.write("under_test.js", script.as_bytes());
        let page = String::from_utf8(build.read("index.html")).expect("the page is UTF-8");
        let (head, tail) = page.split_once("<title>").expect("the page's title");
        let page = format!("{head}<script src=\"under_test.js\"></script><title>{tail}");
        build.write("index.html", page.as_bytes());
        build.list_files();
        build
    }

    /// Where the copy is.
    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Reads one file of the copy.
    ///
    /// # Panics
    /// When the file is not there.
    pub fn read(&self, name: &str) -> Vec<u8> {
        fs::read(self.path().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
    }

    /// Writes one file of the copy.
    ///
    /// # Panics
    /// When the file cannot be written.
    pub fn write(&self, name: &str, bytes: &[u8]) {
        fs::write(self.path().join(name), bytes).unwrap_or_else(|error| panic!("{name}: {error}"));
    }

    /// Removes one file of the copy.
    ///
    /// # Panics
    /// When it is not there.
    pub fn remove(&self, name: &str) {
        fs::remove_file(self.path().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"));
    }

    /// The name of the one file at the copy's top that begins like this.
    ///
    /// # Panics
    /// When there is none, or more than one.
    pub fn beginning(&self, with: &str) -> String {
        let all = fs::read_dir(self.path()).expect("the copy").flatten();
        let names: Vec<String> = all
            .map(|entry| entry.file_name().to_string_lossy().into_owned())
            .filter(|name| name.starts_with(with))
            .collect();
        let [name] = names.as_slice() else {
            panic!("one file begins with {with}: {names:?}");
        };
        name.clone()
    }

    /// Makes the copy a version of its own: its root gets the mark, and the
    /// service worker's list is written anew, as the build writes it.
    ///
    /// # Panics
    /// When the page has no root, or the list cannot be written.
    pub fn mark_build(&self, mark: &str) {
        let page = String::from_utf8(self.read("index.html")).expect("the page is UTF-8");
        let from = "<html lang=\"en\"";
        let (head, tail) = page.split_once(from).expect("the page's root");
        // Over a mark from before, if there is one.
        let tail = tail.split_once('>').expect("the root's end").1;
        let page = format!("{head}{from} data-build=\"{mark}\">{tail}");
        self.write("index.html", page.as_bytes());
        self.list_files();
    }

    /// Writes the service worker's list anew, as the build writes it.
    ///
    /// # Panics
    /// When it cannot be written.
    pub fn list_files(&self) {
        let done = Command::new("node")
            .arg(project().join("tools/precache.mjs"))
            .arg(self.path())
            .output()
            .expect("node runs");
        assert!(
            done.status.success(),
            "{}",
            String::from_utf8_lossy(&done.stderr)
        );
    }
}

fn copy_folder(from: &Path, to: &Path) {
    let entries = fs::read_dir(from).unwrap_or_else(|error| {
        panic!(
            "no release build in {}: {error}; run ./dev test browser",
            from.display()
        )
    });
    for entry in entries {
        let entry = entry.expect("a readable folder");
        let target = to.join(entry.file_name());
        if entry.file_type().expect("a file type").is_dir() {
            fs::create_dir_all(&target).expect("a folder in the copy");
            copy_folder(&entry.path(), &target);
        } else {
            fs::copy(entry.path(), &target).expect("a file in the copy");
        }
    }
}
