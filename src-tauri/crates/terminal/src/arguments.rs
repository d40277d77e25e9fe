//! What can be asked on the command line, with help that teaches.

use chrono::{NaiveDate, NaiveTime};
use clap::{Args, Parser, Subcommand};
use clap_complete::Shell;
use std::path::PathBuf;

/// The call by which this program runs itself a second time, for templates that may not end.
pub(crate) const APART: &str = "set-apart";

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
    /// Write the same course on other dates to a new file; never overwrites
    ///
    /// Every date moves by the same number of days. What was told on the day, what was ticked
    /// off and the forecast are left out; people, wall, stone, kit, prices and notes stay.
    Again(Again),
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
    /// Say why a figure is what it is: the reason, the sum with this course's numbers, the sources
    ///
    /// Without a figure, the figures there are reasons for.
    Explain {
        /// The course file
        file: PathBuf,
        /// The figure, as length, bars, order, chance
        figure: Option<String>,
        /// Your own folder, as for plan
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
    ///
    /// The whole pack, or --only some of it. Pages kept apart for being private are printed
    /// only where --only names them. A page template of your own (lessons/pages in the folder
    /// of --store) that does not work is named with its line, and the built-in one is printed.
    ///
    /// Examples:
    ///   coursewright print --list
    ///   coursewright print weekend.walling --out pages
    ///   coursewright print weekend.walling --out pages --only worksheets --students "Ash Grove"
    ///   coursewright print weekend.walling --out pages --large-print
    ///   coursewright print weekend.walling --json run-sheet --out try-my-template
    #[command(verbatim_doc_comment)]
    Print(Print),
    /// Write the days as a calendar file for phones and calendar programs
    ///
    /// Every line of the timetable at its time, in the clock of the venue, and each day above
    /// them with its place. The same course gives the same file. Import it into a calendar of
    /// its own: then it can be taken out whole when the course changes. A calendar that this
    /// program wrote is replaced; any other file is left alone.
    Calendar(Calendar),
    /// Tell what has been built, and hear how the course stands now
    ///
    /// Put into the course file as [[progress]]; all else in it stays as it is. Then: the chance
    /// of finishing from there, what would help, how to leave the wall safe, when to look next.
    /// A report of the same time, stage and bay replaces the one before.
    Told(Told),
    /// Your pace book: how fast your groups really build; it sharpens the plans made with --store
    #[command(subcommand)]
    Pace(Pace),
    /// Your kit: list, import, export, book it for a course, count it home
    #[command(subcommand)]
    Kit(Kit),
    /// Show the licences of the fonts that the pages are set in
    Licences,
    /// Write what a shell needs to complete these calls when you press Tab
    ///
    /// A package brings it; otherwise it goes where the shell looks for it, as in
    ///   coursewright completions fish > ~/.config/fish/completions/coursewright.fish
    #[command(verbatim_doc_comment)]
    Completions {
        /// The shell
        shell: Shell,
    },
    /// Write the manual pages of this program into a folder
    Manual {
        /// The folder to write into; made if it is not there
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
    },
    /// Set pages for another run of this program, which can end this one
    #[command(name = APART, hide = true)]
    Apart,
}

#[derive(Args)]
pub(crate) struct Again {
    /// The course file it was held from
    pub(crate) file: PathBuf,
    /// The new first day, as 2028-04-22
    #[arg(long, value_name = "DATE")]
    pub(crate) from: NaiveDate,
    /// The file to write, as NAME.walling
    #[arg(long, value_name = "NEW")]
    pub(crate) out: PathBuf,
}

#[derive(Args)]
pub(crate) struct Print {
    /// The course file
    #[arg(required_unless_present = "list")]
    pub(crate) file: Option<PathBuf>,
    /// The folder to print into; made if it is not there
    #[arg(long, value_name = "DIR", required_unless_present_any = ["list", "json"])]
    pub(crate) out: Option<PathBuf>,
    /// Only these documents, with commas between them
    #[arg(long, value_name = "NAME,...", value_delimiter = ',')]
    pub(crate) only: Vec<String>,
    /// In letters of 18 point, for people who can't see well; written as NAME-large-print.pdf
    #[arg(long)]
    pub(crate) large_print: bool,
    /// Of the documents with pages for each student, only those of these students; a name with
    /// a comma in it gets a --students of its own
    #[arg(long, value_name = "NAME,...")]
    pub(crate) students: Vec<String>,
    /// Print nothing, and show as JSON what the template of this document is fed; with --out, put
    /// that into the folder instead, as data.json, and the drawings beside it
    #[arg(long, value_name = "DOC", conflicts_with_all = ["only", "list"])]
    pub(crate) json: Option<String>,
    /// Name the documents and what each is for
    #[arg(long)]
    pub(crate) list: bool,
    /// Your own folder, as for plan
    #[arg(long, value_name = "DIR")]
    pub(crate) store: Option<PathBuf>,
}

#[derive(Args)]
pub(crate) struct Calendar {
    /// The course file
    pub(crate) file: PathBuf,
    /// The calendar file to write, as COURSE.ics
    #[arg(long, value_name = "COURSE.ics")]
    pub(crate) out: PathBuf,
    /// Only one block for each day, from arriving to leaving: what students keep free
    #[arg(long)]
    pub(crate) days: bool,
    /// The date the entries say they were written on, as 2027-04-20; the first course day if it
    /// is left out. A later date tells calendar programs that these entries are the newer ones
    #[arg(long, value_name = "DATE")]
    pub(crate) made: Option<NaiveDate>,
    /// Your own folder, as for plan
    #[arg(long, value_name = "DIR")]
    pub(crate) store: Option<PathBuf>,
}

#[derive(Args)]
pub(crate) struct Told {
    /// The course file
    pub(crate) file: PathBuf,
    /// The stage, by its id: line, dig, frames, footing, first-lift, throughs, ...
    #[arg(required_unless_present = "take_back")]
    pub(crate) stage: Option<String>,
    /// The course day, counted from 1; that of the last report if it is left out, or the first
    #[arg(long, value_name = "N", value_parser = counted)]
    pub(crate) day: Option<u32>,
    /// When you looked, as 11:40
    #[arg(long, value_name = "HH:MM", value_parser = time_of_day, required_unless_present = "take_back")]
    pub(crate) at: Option<NaiveTime>,
    /// The bay, counted from 1 at station 0; all of them if it is left out
    #[arg(long, value_name = "N", value_parser = counted)]
    pub(crate) bay: Option<u32>,
    /// How much of it is done, as 60% or 0.6; all if it is left out
    #[arg(long, value_name = "SHARE", value_parser = share)]
    pub(crate) done: Option<f64>,
    /// Take the last report back instead
    #[arg(long, conflicts_with_all = ["stage", "day", "at", "bay", "done"])]
    pub(crate) take_back: bool,
    /// Your own folder, as for plan
    #[arg(long, value_name = "DIR")]
    pub(crate) store: Option<PathBuf>,
}

/// 1, 2, 3: days and bays are counted from 1.
fn counted(typed: &str) -> Result<u32, String> {
    let number = typed.trim().parse().ok().filter(|number| 0 < *number);
    number.ok_or_else(|| "count from 1: 1, 2, 3".to_owned())
}

/// `11:40` or `11:40:00`.
fn time_of_day(typed: &str) -> Result<NaiveTime, String> {
    let forms = ["%H:%M", "%H:%M:%S"];
    let read = |form: &&str| NaiveTime::parse_from_str(typed.trim(), form).ok();
    forms
        .iter()
        .find_map(read)
        .ok_or_else(|| "write a time of day as 11:40".to_owned())
}

/// `60%`, `60 %` or `0.6`, from nothing to all of it.
fn share(typed: &str) -> Result<f64, String> {
    let typed = typed.trim();
    let share = match typed.strip_suffix('%') {
        Some(percent) => percent.trim().parse::<f64>().map(|it| it / 100.0),
        None => typed.parse(),
    };
    let share = share.ok().filter(|it| (0.0..=1.0).contains(it));
    share
        .ok_or_else(|| "write how much is done as 60% or as 0.6; all of it is 100% or 1".to_owned())
}

#[derive(Subcommand)]
pub(crate) enum Pace {
    /// Show the courses recorded, and what they say of each stage
    List {
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Record what was built on a course; an earlier record of it counts no longer
    ///
    /// What counts is what was told of it with coursewright told, or written as [[progress]].
    Record {
        /// The course file
        course: PathBuf,
        /// The day on which it is recorded; the last course day if it is left out
        #[arg(long, value_name = "DATE")]
        on: Option<NaiveDate>,
        /// The folder of the store; made if it is not there
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Write the pace book to a new CSV file, a row for each stage of each course
    Export {
        /// The file to write
        file: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Take in a pace book, CSV: all of it or, on any fault, nothing
    ///
    /// Columns: course, first day, recorded on, stage, usual minutes, taken minutes, pairs at the
    /// string, course file; all but the pairs must be there. Courses that the file does not name
    /// stay. What was recorded otherwise of a course counts no longer; take-back brings it back.
    Import {
        /// The pace book
        file: PathBuf,
        /// Only show what would change
        #[arg(long)]
        look: bool,
        /// The folder of the store; made if it is not there
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
    /// Take the record of a course back: the one before it counts again, if there was one
    TakeBack {
        /// The course file
        course: PathBuf,
        /// The folder of the store
        #[arg(long, value_name = "DIR")]
        store: PathBuf,
    },
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
