//! `guardrule items [NAME]`

use crate::cli::codes;
use std::io;
use std::io::Write;

use crate::cli::args::ItemsArgs;
use crate::cli::exit::Exit;
use crate::cli::terminal::Terminal;
use crate::input::nearest;
use crate::items::Item;
use crate::report;
use crate::report::TextPage;
use crate::report::one_line;

pub(super) fn run(args: &ItemsArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    if args.name.is_empty() {
        let width = terminal.columns();
        let mut out = terminal.out();
        report::items(&mut TextPage::new(&mut out, width))?;
        out.flush()?;
        return Ok(Exit::Met);
    }
    let name = args.name.join(" ");
    // rulesets write the names with hyphens
    let found = Item::by_name(&name).or_else(|| Item::by_name(&name.replace('-', " ")));
    let Some(item) = found else {
        let name = one_line(&name);
        let mut err = terminal.err();
        let code = codes::NO_SUCH_ITEM;
        writeln!(err, "error[{code}]: there is no item {name:?}")?;
        if let Some(miss) = Item::near_miss_of_name(&name) {
            let offers = miss.offers.join(", ");
            writeln!(err, "  = help: did you mean one of {offers}?")?;
            return Ok(Exit::BadInput);
        }
        match nearest(&name, Item::names()) {
            Some(word) => writeln!(
                err,
                "  = help: did you mean {word}? guardrule items lists all"
            )?,
            None => writeln!(err, "  = help: guardrule items lists all")?,
        }
        return Ok(Exit::BadInput);
    };
    let width = terminal.columns();
    let mut out = terminal.out();
    report::item(&mut TextPage::new(&mut out, width), item)?;
    out.flush()?;
    Ok(Exit::Met)
}
