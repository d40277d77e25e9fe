//! What can be asked on the command line, with help that teaches.

use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

const FIRST_STEPS: &str = "\
First steps:
  coursewright new weekend.walling     write an example, then change it in any editor
  coursewright plan weekend.walling    see wall, frames, stone, tools, days, chance
  coursewright check weekend.walling   see what is not ready
  coursewright print weekend.walling --out pages    print the whole pack as PDF

A course file is text: key = value. Quantities carry their unit: \"1.07 m\",
\"3 ft 6 in\", \"4 t\". A file with a mistake is refused with its line, what is wrong
and what would be right, and is never changed.
Exit codes: 0 done, 1 something to do (check), 2 refused.";

/// Plans hands-on dry stone walling courses.
#[derive(Parser)]
#[command(name = "coursewright", version, after_help = FIRST_STEPS, arg_required_else_help = true)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) call: Call,
}

#[derive(Subcommand)]
pub(crate) enum Call {
    /// Write a complete example course to a new file; never overwrites
    New {
        /// The file to write, as NAME.walling
        file: PathBuf,
        /// An example in feet and inches, for Letter paper
        #[arg(long)]
        imperial: bool,
    },
    /// Work out the whole plan: wall, frames, stone, tools, people, days, chance
    ///
    /// With length = "auto" the wall is sized so that the group finishes with the chance the
    /// file asks for. The same file gives the same plan on every machine.
    Plan {
        /// The course file
        file: PathBuf,
        /// Every number as JSON, in SI units, instead of text for people
        #[arg(long)]
        json: bool,
        /// Your own folder: kit.toml counts your tools, lessons/ holds your own lessons, tables, pages
        #[arg(long, value_name = "DIR")]
        store: Option<PathBuf>,
    },
    /// Say what is not ready; exit 1 if there is anything to do
    ///
    /// Short tools, stone to order and by when, frames and bars to find, a chance below the
    /// wish. Tools nobody has counted are not called short. General cautions are printed but
    /// count for nothing.
    Check {
        /// The course file
        file: PathBuf,
        /// Your own folder, as for plan
        #[arg(long, value_name = "DIR")]
        store: Option<PathBuf>,
    },
    /// Print the documents as PDF into a folder
    Print(Print),
    /// Show the licences of the fonts that the pages are set in
    Licences,
}

#[derive(Args)]
pub(crate) struct Print {
    /// The course file
    #[arg(required_unless_present = "list")]
    pub(crate) file: Option<PathBuf>,
    /// The folder to print into; made if it is not there
    #[arg(long, value_name = "DIR", required_unless_present = "list")]
    pub(crate) out: Option<PathBuf>,
    /// Only these documents, with commas between them
    #[arg(long, value_name = "NAME", value_delimiter = ',')]
    pub(crate) only: Vec<String>,
    /// Name the documents and what each is for
    #[arg(long)]
    pub(crate) list: bool,
    /// Your own folder, as for plan
    #[arg(long, value_name = "DIR")]
    pub(crate) store: Option<PathBuf>,
}
