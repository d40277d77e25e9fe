//! The Debian package: both programs with what a desktop and a shell want to know of them.
//!
//! Made with Debian's own tools from the files in `src-tauri/debian`, so that nothing has to be
//! fetched for it.

use crate::chores::target;
use crate::run::{Done, cargo, heard, program, run, say, top};
use crate::{licences, set_up};
use std::fs;
use std::path::{Path, PathBuf};

/// The version of all our crates.
const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The programs in the package.
const PROGRAMS: [&str; 2] = ["coursewright", "coursewright-desktop"];

/// The sizes of icons that desktops ask for as pictures; all others are drawn from the SVG.
const ICON_SIZES: [&str; 7] = ["16", "24", "32", "48", "64", "128", "256"];

/// Where each shell looks for the completions that packages bring.
const COMPLETIONS: [(&str, &str); 3] = [
    ("bash", "usr/share/bash-completion/completions/coursewright"),
    ("zsh", "usr/share/zsh/vendor-completions/_coursewright"),
    (
        "fish",
        "usr/share/fish/vendor_completions.d/coursewright.fish",
    ),
];

const MEGABYTE: u64 = 1_000_000;

/// How large the package may be.
const MOST_MEGABYTES: u64 = 30;

const MANUAL: &str = "usr/share/man/man1";
const PAPERS: &str = "usr/share/doc/coursewright";

/// Builds both programs for use and packs them.
pub(crate) fn for_use() -> Done {
    set_up::for_the_window()?;
    run(cargo(&["build", "--release", "--workspace", "--bins"]))?;
    let package = Package::of("release").make("xz")?;
    let bytes = fs::metadata(&package)
        .map_err(|wrong| told(&package, &wrong))?
        .len();
    let size = format!("{}: {} MB", package.display(), bytes.div_ceil(MEGABYTE));
    if MOST_MEGABYTES * MEGABYTE < bytes {
        return Err(format!(
            "{size}, and {MOST_MEGABYTES} at most is wanted: people fetch it over a field's telephone"
        ));
    }
    say(&size);
    Ok(())
}

/// Packs the programs as they were last built for the checks, quickly and not small: to see
/// whether a package comes out right, without a build for use.
pub(crate) fn to_try() -> Done {
    let package = Package::of("debug").make("none")?;
    say(&package.display().to_string());
    Ok(())
}

/// A package that is being put together.
struct Package {
    /// Where cargo left the programs.
    built: PathBuf,
    /// The package's own folder, with the tree below and the package beside it.
    folder: PathBuf,
    /// The tree as it will lie on the machine.
    root: PathBuf,
}

impl Package {
    fn of(profile: &str) -> Self {
        let folder = target().join("deb").join(profile);
        Self {
            built: target().join(profile),
            root: folder.join("root"),
            folder,
        }
    }

    fn make(&self, compression: &str) -> Result<PathBuf, String> {
        // A package of an earlier version would be taken for this one.
        if self.folder.exists() {
            fs::remove_dir_all(&self.folder).map_err(|wrong| told(&self.folder, &wrong))?;
        }
        self.programs()?;
        self.desktop()?;
        self.shells()?;
        self.papers()?;
        self.control()?;
        self.pack(compression)
    }

    /// The programs, without the names of their parts, which only a debugger wants.
    fn programs(&self) -> Done {
        for name in PROGRAMS {
            let there = self.copy(&self.built.join(name), &format!("usr/bin/{name}"))?;
            heard(program("strip", &[]).arg(there))?;
        }
        Ok(())
    }

    /// Menu entry, file type and icons.
    fn desktop(&self) -> Done {
        let entry = "coursewright-desktop.desktop";
        self.copy(&source(entry), &format!("usr/share/applications/{entry}"))?;
        self.copy(
            &source("coursewright.xml"),
            "usr/share/mime/packages/coursewright.xml",
        )?;
        let icons = [
            ("program", "apps/coursewright"),
            ("course", "mimetypes/application-x-walling"),
        ];
        let from = top().join("src-tauri/icons");
        for (icon, name) in icons {
            for size in ICON_SIZES {
                let to = format!("usr/share/icons/hicolor/{size}x{size}/{name}.png");
                self.copy(&from.join(format!("{icon}-{size}.png")), &to)?;
            }
            let to = format!("usr/share/icons/hicolor/scalable/{name}.svg");
            self.copy(&from.join(format!("{icon}.svg")), &to)?;
        }
        Ok(())
    }

    /// Manual pages and completions, as the program itself says they are.
    fn shells(&self) -> Done {
        let pages = self.root.join(MANUAL);
        heard(self.terminal(&["manual", "--out"]).arg(&pages))?;
        let window = filled(&source("coursewright-desktop.1"), &[("version", VERSION)])?;
        self.write(&format!("{MANUAL}/coursewright-desktop.1"), &window)?;
        for page in names(&pages)? {
            self.squeeze(&pages.join(page))?;
        }
        for (shell, place) in COMPLETIONS {
            let text = heard(&mut self.terminal(&["completions", shell]))?;
            self.write(place, &text)?;
        }
        Ok(())
    }

    fn papers(&self) -> Done {
        self.copy(&source("copyright"), &format!("{PAPERS}/copyright"))?;
        let changes = self.copy(&source("changelog"), &format!("{PAPERS}/changelog"))?;
        self.squeeze(&changes)?;
        let fonts = heard(&mut self.terminal(&["licences"]))?;
        let text = licences::all(&fonts)?;
        let others = self.write(&format!("{PAPERS}/third-party-licences"), &text)?;
        self.squeeze(&others)
    }

    /// What the package manager reads: who this is, what it needs, what each file must be.
    fn control(&self) -> Done {
        let files = tree(&self.root)?;
        let mut bytes = 0;
        let mut sums = program("md5sum", &[]);
        sums.current_dir(&self.root);
        for file in &files {
            let size = fs::metadata(self.root.join(file)).map_err(|wrong| told(file, &wrong))?;
            bytes += size.len();
            sums.arg(file);
        }
        self.write("DEBIAN/md5sums", &heard(&mut sums)?)?;
        let architecture = heard(&mut program("dpkg", &["--print-architecture"]))?;
        let about = filled(
            &source("control"),
            &[
                ("version", VERSION),
                ("architecture", architecture.trim()),
                ("kilobytes", &bytes.div_ceil(1024).to_string()),
                ("libraries", &self.libraries()?),
            ],
        )?;
        // The format knows no remarks.
        let about: String = about
            .lines()
            .filter(|line| !line.starts_with('#'))
            .map(|line| format!("{line}\n"))
            .collect();
        self.write("DEBIAN/control", &about)?;
        Ok(())
    }

    /// The packages whose libraries the programs are linked with, in the versions they need.
    fn libraries(&self) -> Result<String, String> {
        // Debian's tool wants to run beside the sources of a package.
        let beside = self.folder.join("asked");
        let about = beside.join("debian/control");
        fs::create_dir_all(beside.join("debian")).map_err(|wrong| told(&beside, &wrong))?;
        let least = "Source: coursewright\n\nPackage: coursewright\nArchitecture: any\n";
        fs::write(&about, least).map_err(|wrong| told(&about, &wrong))?;
        let mut ask = program("dpkg-shlibdeps", &["-O"]);
        ask.current_dir(&beside);
        for name in PROGRAMS {
            ask.arg(self.root.join("usr/bin").join(name));
        }
        let said = heard(&mut ask)?;
        let libraries = said.trim().strip_prefix("shlibs:Depends=");
        libraries
            .map(str::to_owned)
            .ok_or_else(|| format!("dpkg-shlibdeps named no libraries: {said}"))
    }

    fn pack(&self, compression: &str) -> Result<PathBuf, String> {
        heard(program("chmod", &["-R", "u=rwX,go=rX"]).arg(&self.root))?;
        // Level 9 looks back over 64 MB, so that it finds again in the second program what the
        // two have alike: fonts, tables, the typesetter.
        let mut pack = program("dpkg-deb", &["--root-owner-group", "-z9", "--build"]);
        pack.arg(format!("-Z{compression}"))
            .arg(&self.root)
            .arg(&self.folder);
        // The day of the version and not of the packing: the same programs give the same package.
        let changes = source("changelog");
        let mut day = program("dpkg-parsechangelog", &["-S", "Timestamp", "-l"]);
        let day = heard(day.arg(changes))?;
        pack.env("SOURCE_DATE_EPOCH", day.trim());
        heard(&mut pack)?;
        let packages = names(&self.folder)?.into_iter();
        let mut packages = packages.filter(|name| name.extension().is_some_and(|it| it == "deb"));
        let package = packages.next().ok_or("dpkg-deb left no package")?;
        Ok(self.folder.join(package))
    }

    /// The terminal program that is being packed.
    fn terminal(&self, arguments: &[&str]) -> std::process::Command {
        program(
            &self.built.join("coursewright").display().to_string(),
            arguments,
        )
    }

    fn copy(&self, from: &Path, to: &str) -> Result<PathBuf, String> {
        let to = self.root.join(to);
        folder_of(&to)?;
        fs::copy(from, &to).map_err(|wrong| told(from, &wrong))?;
        Ok(to)
    }

    fn write(&self, to: &str, text: &str) -> Result<PathBuf, String> {
        let to = self.root.join(to);
        folder_of(&to)?;
        fs::write(&to, text).map_err(|wrong| told(&to, &wrong))?;
        Ok(to)
    }

    /// Papers lie squeezed in a package, with no time and no name of their own in them.
    fn squeeze(&self, file: &Path) -> Done {
        heard(program("gzip", &["-9", "--no-name", "--force"]).arg(file)).map(|_| ())
    }
}

/// A file the package is made from.
fn source(name: &str) -> PathBuf {
    top().join("src-tauri/debian").join(name)
}

/// The text of a file with its words in braces filled in.
fn filled(file: &Path, words: &[(&str, &str)]) -> Result<String, String> {
    let mut text = fs::read_to_string(file).map_err(|wrong| told(file, &wrong))?;
    for (word, value) in words {
        text = text.replace(&format!("{{{word}}}"), value);
    }
    Ok(text)
}

fn folder_of(file: &Path) -> Done {
    let folder = file.parent().unwrap_or(file);
    fs::create_dir_all(folder).map_err(|wrong| told(folder, &wrong))
}

/// The names in a folder, in order.
fn names(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let entries = fs::read_dir(folder).map_err(|wrong| told(folder, &wrong))?;
    let mut names: Vec<PathBuf> = entries
        .filter_map(|entry| Some(entry.ok()?.file_name().into()))
        .collect();
    names.sort();
    Ok(names)
}

/// All files under a folder, as seen from it, in order.
fn tree(root: &Path) -> Result<Vec<PathBuf>, String> {
    let mut found = Vec::new();
    let mut queue = vec![PathBuf::new()];
    while let Some(folder) = queue.pop() {
        for name in names(&root.join(&folder))? {
            let path = folder.join(name);
            if root.join(&path).is_dir() {
                queue.push(path);
            } else {
                found.push(path);
            }
        }
    }
    found.sort();
    Ok(found)
}

fn told(path: &Path, wrong: &std::io::Error) -> String {
    format!("{}: {wrong}", path.display())
}
