//! `guardrule items [NAME]`

use std::io;
use std::io::Write;
use std::sync::Arc;

use crate::cli::args::ItemsArgs;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::terminal::Terminal;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
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
        let help = match (
            Item::near_miss_of_name(&name),
            nearest(&name, Item::names()),
        ) {
            (Some(miss), _) => format!("did you mean one of {}?", miss.offers.join(", ")),
            (None, Some(word)) => format!("did you mean {word}? guardrule items lists all"),
            (None, None) => "guardrule items lists all".to_owned(),
        };
        let at = Excerpt::whole(Arc::from("command line"));
        let message = format!("there is no item {name:?}");
        let mut diagnostics = Diagnostics::new();
        diagnostics.push(Diagnostic::error(codes::NO_SUCH_ITEM, message, at).help(help));
        terminal.diagnostics(&diagnostics)?;
        return Ok(Exit::BadInput);
    };
    let width = terminal.columns();
    let mut out = terminal.out();
    report::item(&mut TextPage::new(&mut out, width), item)?;
    out.flush()?;
    Ok(Exit::Met)
}
