//! What can be typed.

use std::num::NonZero;
use std::num::NonZeroU32;
use std::path::PathBuf;

use clap::Args;
use clap::Parser;
use clap::Subcommand;
use clap::ValueEnum;

/// Check railings with a tape measure against the rules that hold for them
///
/// Write down what you measure at each stair railing, balcony or deck guard in a CSV
/// file (the survey), and guardrule says rule by rule whether it meets, falls
/// short, is too close to call with that tape, or was not measured.
///
/// It never says that a guard is safe. The local authority and licensed
/// professionals decide.
#[derive(Debug, Parser)]
#[command(
    name = "guardrule",
    version,
    propagate_version = true,
    max_term_width = 80,
    after_help = "Examples:\n  \
        guardrule walk porch.csv\n  \
        guardrule check demo-surveys/family-house.csv\n  \
        guardrule items height\n  \
        guardrule rules list"
)]
pub struct Cli {
    /// Colour the output
    #[arg(long, global = true, value_name = "WHEN", default_value = "auto")]
    pub(super) color: Colour,
    #[command(subcommand)]
    pub(super) command: Command,
}

/// When to colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Colour {
    /// On a terminal, unless NO_COLOR is set
    Auto,
    /// Always
    Always,
    /// Never
    Never,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Judge the guards of a survey and report
    Check(CheckArgs),
    /// Say what became of each guard from one round to the next
    Compare(CompareArgs),
    /// Show what can be written down, and how to measure it
    Items(ItemsArgs),
    /// Work out where the balusters of one bay stand
    Layout(LayoutArgs),
    /// Work out the largest ball through one shape
    Opening(OpeningArgs),
    /// Write the whole walk as one HTML file for a phone
    Page(PageArgs),
    /// Work out what would put each shortfall right, and prove it
    Remedy(RemedyArgs),
    /// Look at rulesets and test them
    Rules(RulesArgs),
    /// Write a sheet to print and fill in by hand, or a blank survey
    Sheet(SheetArgs),
    /// Ask for a survey one question at a time, standing at the guard
    Walk(WalkArgs),
}

/// Write the whole walk as one HTML file for a phone
///
/// The file asks, judges and reports by itself, without network: send it by mail or
/// messenger, or put it on any web address. Nothing that is entered leaves the phone
/// unless it is sent by hand.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  guardrule page --output guardrule.html")]
pub(super) struct PageArgs {
    /// Write the page to this file, whole or not at all; - is standard output
    #[arg(long, value_name = "FILE")]
    pub(super) output: PathBuf,
    /// Replace a file after --output that is no page of guardrule
    #[arg(long)]
    pub(super) force: bool,
    /// The packed module, where this guardrule was built without it
    #[arg(long, value_name = "FILE")]
    pub(super) module: Option<PathBuf>,
}

/// Judge the guards of a survey and report
///
/// The exit status follows the verdict: 0 every rule that applies is met; 1
/// something falls short; 3 nothing falls short, but something is undecided; 2
/// a file or the command line is faulty (what could be judged is reported all
/// the same).
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule check demo-surveys/family-house.csv\n  \
    guardrule check ours.csv --rules us-dwelling-2018 --rules my-town.toml\n  \
    guardrule check old.csv --rules us-dwelling-2018 --when-built\n  \
    guardrule check flats.csv --format actions --output work.csv\n  \
    guardrule check ours.csv --format html --output report.html\n  \
    guardrule check ours.csv --format html --as request --output letter.html\n  \
    guardrule check flats.csv --format csv --output findings.csv")]
pub(super) struct CheckArgs {
    /// Survey files; several make one survey, - is standard input
    #[arg(required = true, value_name = "SURVEY")]
    pub(super) surveys: Vec<PathBuf>,
    /// Judge by this ruleset: an id, or a file; repeat for several
    #[arg(long, value_name = "ID|FILE")]
    pub(super) rules: Vec<String>,
    /// Form of the report
    #[arg(long, value_name = "FORM", default_value = "text")]
    pub(super) format: Format,
    /// Write the report to this file, whole or not at all; - is standard output. With
    /// --format html a folder (pages/): a first page, and one for each unit
    #[arg(long, value_name = "FILE|DIR")]
    pub(super) output: Option<PathBuf>,
    /// Replace a file after --output that is no report
    #[arg(long, requires = "output")]
    pub(super) force: bool,
    /// With --format html: what comes first, and for whom
    #[arg(long = "as", value_name = "WHAT")]
    pub(super) page_for: Option<PageForArg>,
    /// How a reading near a limit is decided
    #[arg(long, value_name = "HOW", default_value = "guarded")]
    pub(super) decision: DecisionArg,
    /// Report on guards of this building only
    #[arg(long, value_name = "NAME")]
    pub(super) building: Option<String>,
    /// Report on guards of this unit only
    #[arg(long, value_name = "NAME")]
    pub(super) unit: Option<String>,
    /// Report on guards of this name only
    #[arg(long, value_name = "NAME")]
    pub(super) guard: Option<String>,
    /// Leave out the child guidance that nobody asked for
    #[arg(long)]
    pub(super) no_guidance: bool,
    /// Whether rules written from memory decide, or only warn
    #[arg(long, value_name = "HOW", default_value = "warns")]
    pub(super) memory: MemoryArg,
    /// Judge by the edition of the time of building as well, where it is known
    #[arg(long)]
    pub(super) when_built: bool,
    /// Show the arithmetic of each finding
    #[arg(long)]
    pub(super) explain: bool,
    /// Everything: each finding with its rule, source and why
    #[arg(long)]
    pub(super) full: bool,
    /// Judge a survey of many guards on so many threads [default: one for each processor]
    #[arg(long, value_name = "N")]
    pub(super) threads: Option<NonZero<usize>>,
}

/// Say what became of each guard from one round to the next
///
/// What was mended, what is still short, what is worse or new, what nobody measured
/// again. Guards are paired by building, unit and name; one that stands in one round
/// alone is asked about. A change smaller than the doubt of both tapes is none. The
/// second round may be the list of work (check --format actions) with its last two
/// columns filled in. The exit status is 0 where nothing is short, worse or new, 1
/// where something is, 3 where something is only open, 2 where a file is faulty.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule compare tests/reports/surveys/twelve-flats.csv demo-surveys/twelve-flats.csv\n  \
    guardrule compare flats-2026.csv flats-2027.csv --rules us-dwelling-2018\n  \
    guardrule compare flats.csv work-done.csv --format html --output round.html")]
pub(super) struct CompareArgs {
    /// The survey of the first round
    #[arg(value_name = "BEFORE")]
    pub(super) before: PathBuf,
    /// The survey of the second round, or the list of work filled in
    #[arg(value_name = "AFTER")]
    pub(super) after: PathBuf,
    /// Judge both by this ruleset: an id, or a file; repeat for several
    #[arg(long, value_name = "ID|FILE")]
    pub(super) rules: Vec<String>,
    /// Leave out the child guidance that nobody asked for
    #[arg(long)]
    pub(super) no_guidance: bool,
    /// How a reading near a limit is decided
    #[arg(long, value_name = "HOW", default_value = "guarded")]
    pub(super) decision: DecisionArg,
    /// Form of the answer
    #[arg(long, value_name = "FORM", default_value = "text")]
    pub(super) format: CompareFormat,
    /// Write it to this file, whole or not at all; - is standard output
    #[arg(long, value_name = "FILE")]
    pub(super) output: Option<PathBuf>,
    /// Replace a file after --output that is no report
    #[arg(long, requires = "output")]
    pub(super) force: bool,
}

/// Forms of a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum CompareFormat {
    /// For reading on a terminal
    Text,
    /// A page to print or to hand over
    Html,
    /// For programs
    Json,
    /// For a spreadsheet: one change a row
    Csv,
}

/// Forms of a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// A list of work, a row for each act: CSV, or a table on a terminal
    Actions,
    /// For reading on a terminal
    Text,
    /// A page to print or to hand over
    Html,
    /// For programs: everything
    Json,
    /// For a spreadsheet: one finding a row
    Csv,
    /// The counts alone, as JSON
    Summary,
}

/// What comes first in a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum PageForArg {
    /// A letter that asks a landlord to repair
    Request,
    /// A list of work by trade and place, with room to measure again
    Work,
    /// A record to sign: everything, and what was not looked at
    Record,
    /// The deciding holes at life size, with discs of the balls to cut out
    LifeSize,
}

/// How a reading near a limit is decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum DecisionArg {
    /// Only when the tape's doubt cannot change the verdict
    Guarded,
    /// By the reading alone
    Simple,
}

/// Whether rules from memory decide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum MemoryArg {
    /// They only warn
    Warns,
    /// They decide as others do
    Decides,
}

/// Show what can be written down, and how to measure it
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule items\n  \
    guardrule items height\n  \
    guardrule items stair triangle")]
pub(super) struct ItemsArgs {
    /// One item; without it, the list of all
    #[arg(value_name = "NAME")]
    pub(super) name: Vec<String>,
}

/// Work out the largest ball through one shape
///
/// The shape is written as in a survey, and taken as exact. With --ball the exit
/// status is 0 where that ball is stopped, 1 where it passes, 3 where the sum
/// cannot tell; 2 where the shape or the ball cannot be read. A ball in the hand
/// settles it without arithmetic.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule opening triangle 7 3/8 x 10 1/2 in\n  \
    guardrule opening rise 7 3/8 going 10 1/2 lift 1 7/8 in\n  \
    guardrule opening slot 4 9/16 in --format json\n  \
    guardrule opening raked 4 11/16 along rise 7 3/8 going 10 1/2 in\n  \
    guardrule opening turned 4 1/2 in centres 0:1 3/4 6:1 12:1 3/4 in --format svg\n  \
    guardrule opening cable 3 in spacing 1/8 in diameter 36 in free --ball \"4 in\"\n  \
    guardrule opening \"polygon 0:0 120:0 60:90 mm\" --ball \"100 mm\"")]
pub(super) struct OpeningArgs {
    /// The shape, as a survey's cell would have it
    #[arg(required = true, value_name = "SHAPE")]
    pub(super) shape: Vec<String>,
    /// Whether a ball of this diameter passes
    #[arg(long, value_name = "LENGTH")]
    pub(super) ball: Option<String>,
    /// Form of the answer
    #[arg(long, value_name = "FORM", default_value = "text")]
    pub(super) format: OpeningFormat,
}

/// Forms of an answer about one shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum OpeningFormat {
    /// For reading on a terminal
    Text,
    /// For programs: millimetres, in full
    Json,
    /// A drawing of the opening with its largest ball, to scale
    Svg,
}

/// Work out where the balusters of one bay stand
///
/// The fewest balusters that keep every gap below the limit, and a mark for each,
/// counted from one post so that no rounding adds up. What the builder may be off
/// and what the wood may shrink is kept free. With --rake the bay is measured along
/// the rail, and marked from the upper post. With --between, balusters are added
/// to gaps that are there already.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule layout --clear 68in --baluster 1-1/4in --limit 4in\n  \
    guardrule layout --clear 1730mm --baluster 25mm --limit 110mm --at-most --ends half-gap\n  \
    guardrule layout --clear 93in --baluster 3/4in --limit 4in --rake 7-1/2x10in\n  \
    guardrule layout --between 5in --between 4-1/4in --baluster 1in --limit 3-1/2in")]
pub(super) struct LayoutArgs {
    /// From post to post; with --rake along the rail
    #[arg(long, value_name = "LENGTH", required_unless_present = "between")]
    pub(super) clear: Option<String>,
    /// A gap that is there already, to put balusters into; repeat for several
    #[arg(long, value_name = "LENGTH", conflicts_with_all = ["clear", "rake", "ends"])]
    pub(super) between: Vec<String>,
    /// How wide a baluster is
    #[arg(long, value_name = "LENGTH")]
    pub(super) baluster: String,
    /// A ball of this size must not pass between two balusters
    #[arg(long, value_name = "LENGTH")]
    pub(super) limit: String,
    /// A gap of exactly the limit is allowed
    #[arg(long)]
    pub(super) at_most: bool,
    /// What stands at both ends
    #[arg(long, value_name = "WHAT", default_value = "gap")]
    pub(super) ends: EndsArg,
    /// How steep the rail is: an angle, or rise x going
    #[arg(long, value_name = "SLOPE")]
    pub(super) rake: Option<String>,
    /// The step of the marks; 1/16 in or 1 mm if not said
    #[arg(long, value_name = "LENGTH")]
    pub(super) graduation: Option<String>,
    /// How far a finished gap may be off; 1/8 in or 3 mm if not said
    #[arg(long, value_name = "LENGTH")]
    pub(super) tolerance: Option<String>,
    /// How much narrower a baluster gets as it dries; 1.8 per cent, as dry softwood does, if not said
    #[arg(long, value_name = "LENGTH")]
    pub(super) dries_by: Option<String>,
    /// Form of the answer
    #[arg(long, value_name = "FORM", default_value = "text")]
    pub(super) format: LayoutFormat,
}

/// Work out what would put each shortfall right, and prove it
///
/// For each railing what comes tonight, then the steps that satisfy all chosen rules
/// at once, with their numbers, who does them and what they need; each was judged
/// again with the same rules, and what would break another rule is not offered, with
/// the reason. --write writes the railings as they would be, for check. The exit
/// status is 0 where every shortfall has a remedy that judging again confirms, 1 where
/// one has none or a danger stands, 3 where something stays undecided, 2 where a file
/// or the command line is faulty.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule remedy demo-surveys/family-house.csv\n  \
    guardrule remedy ours.csv --guard deck --write after.csv\n  \
    guardrule remedy flats.csv --format csv > shop.csv\n  \
    guardrule remedy ours.csv --format svg > bays.svg")]
pub(super) struct RemedyArgs {
    /// Survey files; several make one survey, - is standard input
    #[arg(required = true, value_name = "SURVEY")]
    pub(super) surveys: Vec<PathBuf>,
    /// Judge by this ruleset: an id, or a file; repeat for several
    #[arg(long, value_name = "ID|FILE")]
    pub(super) rules: Vec<String>,
    /// Form of the answer
    #[arg(long, value_name = "FORM", default_value = "text")]
    pub(super) format: RemedyFormat,
    /// Write the railings as they would be to this file, a survey that check reads
    #[arg(long, value_name = "FILE")]
    pub(super) write: Option<PathBuf>,
    /// Replace a file after --write that is there already
    #[arg(long, requires = "write")]
    pub(super) force: bool,
    /// Guards of this building only
    #[arg(long, value_name = "NAME")]
    pub(super) building: Option<String>,
    /// Guards of this unit only
    #[arg(long, value_name = "NAME")]
    pub(super) unit: Option<String>,
    /// Guards of this name only
    #[arg(long, value_name = "NAME")]
    pub(super) guard: Option<String>,
    /// Leave out the child guidance that nobody asked for
    #[arg(long)]
    pub(super) no_guidance: bool,
}

/// Forms of an answer about remedies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum RemedyFormat {
    /// For reading on a terminal
    Text,
    /// For programs: everything, lengths in millimetres
    Json,
    /// For the shop: a row for each part of each step
    Csv,
    /// A drawing of each bay with its marks, to scale
    Svg,
}

/// What stands at the ends of a bay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum EndsArg {
    /// A baluster against each post
    Baluster,
    /// A gap like the others
    Gap,
    /// Half a gap
    HalfGap,
}

/// Forms of an answer about one bay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum LayoutFormat {
    /// For reading on a terminal
    Text,
    /// For programs: millimetres
    Json,
    /// A drawing of the bay with its marks, to scale
    Svg,
}

/// Ask for a survey one question at a time, standing at the guard
///
/// Asks only what the chosen rules need, says how to measure it, catches slips,
/// and says at once what falls short. Every answer is saved in the file before
/// the next question; begin again with the same file to go on. A survey that
/// was written by hand can be gone on with. The exit status is 0, or 2 where the
/// file cannot be read or written.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule walk porch.csv\n  \
    guardrule walk porch.csv --rules us-dwelling-2018\n\n\
    In the walk: Enter skips, ? tells more, help lists what can be typed.")]
pub(super) struct WalkArgs {
    /// The survey; made where it is not there
    #[arg(value_name = "FILE")]
    pub(super) survey: PathBuf,
    /// Ask for what this ruleset needs: an id, or a file; repeat for several
    #[arg(long, value_name = "ID|FILE")]
    pub(super) rules: Vec<String>,
    /// Leave out the child guidance that nobody asked for
    #[arg(long)]
    pub(super) no_guidance: bool,
}

/// Look at rulesets and test them
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule rules list\n  \
    guardrule rules show us-dwelling-2018\n  \
    guardrule rules test my-town.toml")]
pub(super) struct RulesArgs {
    #[command(subcommand)]
    pub(super) command: RulesCommand,
}

/// What to do with rulesets.
#[derive(Debug, Subcommand)]
pub(super) enum RulesCommand {
    /// Say which rules and limits differ between two rulesets
    #[command(
        after_help = "Examples:\n  guardrule rules diff us-dwelling-2018 california-dwelling\n  guardrule rules diff us-dwelling-2018 my-town.toml"
    )]
    Diff {
        /// An id, or a file
        #[arg(value_name = "ID|FILE")]
        first: String,
        /// The one to put beside it: an id, or a file
        #[arg(value_name = "ID|FILE")]
        second: String,
    },
    /// Find the rulesets that hold where you are, by plain words
    ///
    /// Say where it is, what kind of building, and what you look at. Without words
    /// it tells what to say.
    #[command(
        after_help = "Examples:\n  guardrule rules find flat in Florida\n  guardrule rules find deck, Ontario\n  guardrule rules find rented house in England, built 1994"
    )]
    Find {
        /// Plain words
        #[arg(value_name = "WORDS")]
        words: Vec<String>,
    },
    /// List the rulesets that come with the program, a line each
    #[command(after_help = "Examples:\n  guardrule rules list\n  guardrule rules list --full")]
    List {
        /// With titles, editions, and how their rules were read
        #[arg(long)]
        full: bool,
    },
    /// Show what a ruleset asks, rule by rule
    #[command(after_help = "Example:\n  guardrule rules show small-child-advice")]
    Show {
        /// An id, or a file
        #[arg(value_name = "ID|FILE")]
        ruleset: String,
    },
    /// Judge the examples written in rulesets
    ///
    /// Without a file, all rulesets that come with the program. The exit status
    /// is 1 when an example does not come out as it says.
    #[command(
        after_help = "Examples:\n  guardrule rules test\n  guardrule rules test my-town.toml"
    )]
    Test {
        /// Ids or files
        #[arg(value_name = "ID|FILE")]
        rulesets: Vec<String>,
    },
}

/// Write a sheet to print and fill in by hand, or a blank survey
///
/// One HTML file: a first page with cautions and how to write things down, a
/// page for each guard with a box for each thing that the chosen rulesets ask
/// for, and their limits at the back. Open it in a browser and print it. With
/// --csv, a blank survey for a spreadsheet instead: write over the names, fill
/// in what you measured, delete rows that you do not need; an empty cell is not
/// measured. Without --rules, for the child guidance alone.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
    guardrule sheet --output sheet.html\n  \
    guardrule sheet --rules us-dwelling-2018 --guards 3 --output sheet.html\n  \
    guardrule sheet --csv --rules us-dwelling-2018 --units 40 --output flats.csv\n  \
    guardrule sheet --xlsx --rules us-dwelling-2018 --units 40 --output flats.xlsx")]
pub(super) struct SheetArgs {
    /// Ask what this ruleset asks: an id, or a file; repeat for several
    #[arg(long, value_name = "ID|FILE")]
    pub(super) rules: Vec<String>,
    /// Leave out the child guidance that nobody asked for
    #[arg(long)]
    pub(super) no_guidance: bool,
    /// The paper; without it, pages fit A4 and Letter
    #[arg(long, value_name = "SIZE", conflicts_with = "blank")]
    pub(super) paper: Option<PaperArg>,
    /// How many guards; with --units, in each unit
    #[arg(long, value_name = "N", default_value = "1")]
    pub(super) guards: NonZeroU32,
    /// Pages about what holds each guard as well
    #[arg(long, conflicts_with = "blank")]
    pub(super) strength: bool,
    /// A blank survey in CSV, one guard a row, instead of a page
    #[arg(long, group = "blank")]
    pub(super) csv: bool,
    /// The same as a workbook (.xlsx), with lists to choose from and notes on how to measure
    #[cfg(feature = "spreadsheet")]
    #[arg(long, group = "blank", requires = "output")]
    pub(super) xlsx: bool,
    /// How many units the blank survey has rows for
    #[arg(long, value_name = "N", requires = "blank")]
    pub(super) units: Option<NonZeroU32>,
    /// Write it to this file, whole or not at all; - is standard output
    #[arg(long, value_name = "FILE")]
    pub(super) output: Option<PathBuf>,
    /// Replace a file after --output that is no sheet
    #[arg(long, requires = "output")]
    pub(super) force: bool,
}

/// Sizes of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum PaperArg {
    /// 210 x 297 mm
    A4,
    /// 8 1/2 x 11 in
    Letter,
}
