//! What can be asked on the command line, with help that teaches.

use chrono::NaiveDate;
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
        /// Your own folder: kit.db is your kit store, lessons/ holds your own lessons, tables, pages
        #[arg(long, value_name = "DIR")]
        store: Option<PathBuf>,
    },
    /// Say what is not ready, by date; exit 1 if there is anything to do
    ///
    /// Stone to order and by when, frames, bars and tools to find, loads too heavy, a chance
    /// below the wish. Tools nobody has counted are not called short. What has to be arranged
    /// (permission, insurance, ...) counts once the course file keeps marks of it in [ready].
    /// General cautions are printed but count for nothing.
    Check {
        /// The course file
        file: PathBuf,
        /// Show the names by which [ready] done = [...] marks what is done
        #[arg(long)]
        names: bool,
        /// Your own folder, as for plan
        #[arg(long, value_name = "DIR")]
        store: Option<PathBuf>,
    },
    /// Print the documents as PDF into a folder
    Print(Print),
    /// Your kit: list, import, export, book it for a course, count it home
    #[command(subcommand)]
    Kit(Kit),
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

#[derive(Subcommand)]
pub(crate) enum Kit {
    /// Show what there is, who has booked, and what clashes; exit 1 if anything does
    List {
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Take in a kit list, CSV or XLSX: all of it or, on any fault, nothing
    ///
    /// Columns: item, unit, owner, good, needs care, broken, mass kg, note; item and good must
    /// be there. What the file does not name stays.
    Import {
        /// The list
        file: PathBuf,
        /// The file is the whole list: what it does not name goes
        #[arg(long)]
        replace: bool,
        /// Only show what would change
        #[arg(long)]
        look: bool,
        /// The folder of the store; made if it is not there
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Write the kit list to a new file, CSV or XLSX by its ending
    Export {
        /// The file to write
        file: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Book what a course needs for its days; exit 1 if that clashes with another course
    Book {
        /// The course file
        course: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Let go of what a course has booked
    Release {
        /// The course file
        course: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Count the kit of a course home; the store follows
    Home(CountedHome),
    /// Take counting home back: the store is as it was before
    NotHome {
        /// The course file
        course: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
}

#[derive(Args)]
pub(crate) struct CountedHome {
    /// The course file
    pub(crate) course: PathBuf,
    /// Came back with something to see to; may be given again for other items
    #[arg(long, value_name = "ITEM=COUNT")]
    pub(crate) care: Vec<String>,
    /// Came back broken
    #[arg(long, value_name = "ITEM=COUNT")]
    pub(crate) broken: Vec<String>,
    /// Was used up
    #[arg(long = "used-up", value_name = "ITEM=COUNT")]
    pub(crate) used_up: Vec<String>,
    /// Did not come back
    #[arg(long, value_name = "ITEM=COUNT")]
    pub(crate) lost: Vec<String>,
    /// The day; the last course day if it is left out
    #[arg(long, value_name = "DATE")]
    pub(crate) on: Option<NaiveDate>,
    /// The folder of the store
    #[arg(long, value_name = "DIR")]
    pub(crate) store: PathBuf,
}
