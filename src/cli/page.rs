//! `guardrule page`: the whole walk and judge as one HTML file for a phone.
//!
//! The page holds the core compiled to WebAssembly. A program that was built with the
//! feature `page` has that module inside; any other is told where it lies.

use std::borrow::Cow;
use std::fs;
use std::io;
use std::io::Write;
use std::path::Path;
use std::sync::Arc;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use maud::html;
use sha2::Digest;
use sha2::Sha256;

use crate::cli::args::PageArgs;
use crate::cli::check::no_output;
use crate::cli::check::system_refusal;
use crate::cli::codes;
use crate::cli::exit::Exit;
use crate::cli::output::Output;
use crate::cli::output::Replacing;
use crate::cli::rules::print_diagnostics;
use crate::cli::terminal::Terminal;
use crate::input::Diagnostic;
use crate::input::Diagnostics;
use crate::input::Excerpt;
use crate::report;
use crate::walk::Prompt;
use crate::walk::RulesSearch;

/// The module, packed, where this program was built with it.
#[cfg(feature = "page")]
const MODULE: Option<&[u8]> = Some(include_bytes!(env!(
    "GUARDRULE_PAGE_MODULE",
    "the feature `page` packs the module of the page: build with bash src/phone/build.sh"
)));
#[cfg(not(feature = "page"))]
const MODULE: Option<&[u8]> = None;

const TEMPLATE: &str = include_str!("../phone/page/page.html");
const STYLE: &str = include_str!("../phone/page/page.css");
/// What runs before anything is painted.
const EARLY: &str = include_str!("../phone/page/early.js");
const SCRIPT: &str = concat!(
    include_str!("../phone/page/unpack.js"),
    include_str!("../phone/page/core.js"),
    include_str!("../phone/page/kept.js"),
    include_str!("../phone/page/page.js"),
);

/// What would end a script element, or open a comment in it.
const NEVER_IN_A_SCRIPT: [&str; 3] = ["</script", "<script", "<!--"];

/// The head of an .lzma file: its properties, how far back copies reach, and its size unpacked.
const LZMA_HEAD: usize = 13;

/// Properties beyond this are none. (LZMA specification, 2015)
const LZMA_PROPERTIES: u8 = 225;

pub(super) fn run(args: &PageArgs, terminal: &mut Terminal<'_>) -> io::Result<Exit> {
    let mut diagnostics = Diagnostics::new();
    if let Err(diagnostic) = written(args, terminal) {
        diagnostics.push(*diagnostic);
    }
    print_diagnostics(&diagnostics, terminal, Exit::Met)
}

fn written(args: &PageArgs, terminal: &mut Terminal<'_>) -> Result<(), Box<Diagnostic>> {
    let module = module(args.module.as_deref())?;
    let page = assembled(&module).map_err(|part| {
        let at = Excerpt::whole(Arc::from("page"));
        let message = format!("{part} stands in a part of the page that is a script");
        Diagnostic::error(codes::NO_PAGE, message, at).help("a page with it would break off there")
    })?;
    let path = args.output.as_path();
    if path == Path::new("-") {
        let mut out = terminal.plain_out();
        let written = out.write_all(page.as_bytes()).and_then(|()| out.flush());
        return written.map_err(|error| {
            Box::new(system_refusal(
                codes::CANNOT_WRITE,
                "standard output",
                &error,
            ))
        });
    }
    let replacing = if args.force {
        Replacing::Anything
    } else {
        Replacing::Reports
    };
    let written = Output::to(path, replacing).and_then(|mut file| {
        file.write_all(page.as_bytes())?;
        Ok(file.finish()?)
    });
    written.map_err(|error| Box::new(no_output(path, &error)))
}

/// The packed module: that of `--module`, else the program's own.
fn module(path: Option<&Path>) -> Result<Cow<'static, [u8]>, Box<Diagnostic>> {
    let Some(path) = path else {
        return MODULE.map(Cow::Borrowed).ok_or_else(|| {
            let at = Excerpt::whole(Arc::from("page"));
            let message = "this guardrule was built without the module of the page";
            Box::new(Diagnostic::error(codes::NO_PAGE, message, at).help(
                "in the source of guardrule, bash src/phone/build.sh writes the page; cargo install --features page builds it in",
            ))
        });
    };
    let name = path.display().to_string();
    let bytes = fs::read(path)
        .map_err(|error| Box::new(system_refusal(codes::CANNOT_READ, &name, &error)))?;
    if is_packed(&bytes) {
        return Ok(Cow::Owned(bytes));
    }
    let at = Excerpt::whole(Arc::from(name.as_str()));
    let message = format!("{name} is no module packed as .lzma, with its size in the head");
    Err(Box::new(
        Diagnostic::error(codes::NO_PAGE, message, at)
            .help("bash src/phone/build.sh makes one: guardrule.wasm.lzma"),
    ))
}

/// Whether bytes begin as an .lzma file whose head says how large it is unpacked.
fn is_packed(bytes: &[u8]) -> bool {
    let unknown = [0xff; 8];
    bytes.len() > LZMA_HEAD
        && bytes.first().is_some_and(|first| *first < LZMA_PROPERTIES)
        && bytes
            .get(5..LZMA_HEAD)
            .is_some_and(|size| size != unknown && size[5..] == [0; 3])
}

/// The page around a packed module.
///
/// # Errors
/// What stands in a script and would end it: nothing can be escaped there.
fn assembled(module: &[u8]) -> Result<String, &'static str> {
    let scripts = [EARLY, SCRIPT].concat().to_lowercase();
    if let Some(part) = NEVER_IN_A_SCRIPT
        .iter()
        .find(|part| scripts.contains(**part))
    {
        return Err(part);
    }
    let policy = policy();
    let bytes = module.len().to_string();
    let module = in_pairs(module);
    let ask = RulesSearch::new(&[]).step();
    let first = first_question(&ask);
    let filled = [
        ("csp", policy.as_str()),
        ("css", STYLE),
        ("early", EARLY),
        ("bytes", &bytes),
        ("module", &module),
        ("js", SCRIPT),
    ];
    let first = first.iter().map(|(name, part)| (*name, part.as_str()));
    let parts: Vec<(&str, &str)> = first.chain(filled).collect();
    // in one pass, so that a part's own braces are never taken for a place to fill
    let mut page = String::with_capacity(module.len() + 100_000);
    let mut rest = TEMPLATE;
    while let Some((before, after)) = rest.split_once("{{") {
        let Some((name, after)) = after.split_once("}}") else {
            break;
        };
        let part = parts.iter().find(|(other, _)| *other == name);
        page.push_str(before);
        page.push_str(part.map_or("", |(_, part)| part));
        rest = after;
    }
    page.push_str(rest);
    Ok(page)
}

/// Letters of a module inside the page: all that is printed, but for those that mean
/// something in HTML.
const LETTERS: u16 = 91;

/// Bits that two of them hold: 91 × 91 is a little more than 2 to the power of 13.
const BITS: u32 = 13;

fn letter(value: u16) -> char {
    let printed = ('!'..='~').filter(|c| !['&', '<', '>'].contains(c));
    printed.into_iter().nth(usize::from(value)).unwrap_or('!')
}

/// Bytes as letters, thirteen bits in two of them: a twelfth shorter than base64.
fn in_pairs(bytes: &[u8]) -> String {
    let alphabet: Vec<char> = (0..LETTERS).map(letter).collect();
    let mut text = String::with_capacity(bytes.len() * 16 / 13 + 2);
    let mut put = |value: u32| {
        for place in [value / u32::from(LETTERS), value % u32::from(LETTERS)] {
            let place = usize::try_from(place).unwrap_or(0);
            text.extend(alphabet.get(place));
        }
    };
    let (mut kept, mut bits) = (0_u32, 0_u32);
    for byte in bytes {
        kept |= u32::from(*byte) << bits;
        bits += 8;
        if bits >= BITS {
            put(kept & ((1 << BITS) - 1));
            kept >>= BITS;
            bits -= BITS;
        }
    }
    if bits > 0 {
        put(kept);
    }
    text
}

/// The first question as text of the page, so that it stands there before any script runs.
fn first_question(ask: &Prompt) -> [(&'static str, String); 4] {
    let text = |text: &str| html! { (text) }.into_string();
    [
        ("question", text(&ask.question)),
        (
            "examples",
            text(&format!("For example: {}", ask.examples.join("; "))),
        ),
        ("enter", text(&report::capital(&ask.enter))),
        ("more", text(&ask.more.join(" "))),
    ]
}

/// Nothing is fetched from anywhere; this script and this style count and no other;
/// WebAssembly may be compiled, and no text is run as code; pictures are the page's own.
fn policy() -> String {
    let hash = |text: &str| format!("'sha256-{}'", STANDARD.encode(Sha256::digest(text)));
    format!(
        "default-src 'none'; script-src {} {} 'wasm-unsafe-eval'; style-src {} {}; img-src data: blob:; base-uri 'none'; form-action 'none'",
        hash(EARLY),
        hash(SCRIPT),
        hash(STYLE),
        // the report is shown in a frame of its own, which obeys this policy too
        hash(report::PAGE_STYLE)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_of_the_template_is_filled_once() {
        let module = [&[4, 0, 0, 4, 0, 8, 0, 0, 0, 0, 0, 0, 0][..], b"anything"].concat();
        assert!(is_packed(&module) && !is_packed(b"\0asm\x01\0\0\0 and more of it"));
        let page = assembled(&module).expect("nothing ends the script");
        let first = first_question(&RulesSearch::new(&[]).step());
        for (place, part) in [
            ("{{csp}}", policy()),
            ("{{css}}", STYLE.to_owned()),
            ("{{module}}", in_pairs(&module)),
            ("{{bytes}}", format!("data-bytes=\"{}\"", module.len())),
            ("{{question}}", first[0].1.clone()),
            ("{{examples}}", first[1].1.clone()),
            ("{{enter}}", first[2].1.clone()),
            ("{{more}}", first[3].1.clone()),
            ("{{early}}", EARLY.to_owned()),
            ("{{js}}", SCRIPT.to_owned()),
        ] {
            assert_eq!(TEMPLATE.matches(place).count(), 1, "{place}");
            assert_eq!(page.matches(&part).count(), 1, "{place}");
            assert!(!page.contains(place), "{place}");
        }
    }

    /// A browser takes half the room and a third less time for a megabyte of single bytes.
    #[test]
    fn the_page_is_ascii() {
        let page = assembled(b"anything").expect("nothing ends the script");
        let odd = page.chars().find(|sign| !sign.is_ascii());
        assert_eq!(odd, None, "in a script write \\u2026, in HTML &#x2026;");
    }

    /// Each pair of letters is thirteen bits, the least first; none ends the script.
    #[test]
    fn a_module_in_letters_is_read_back() {
        let bytes: Vec<u8> = (0..2_000_u32)
            .map(|n| (n * n / 7).to_le_bytes()[0])
            .collect();
        for length in [0, 1, 2, 12, 13, 14, 1_999] {
            let text = in_pairs(&bytes[..length]);
            let values: Vec<u32> = text
                .chars()
                .map(|c| (0..LETTERS).position(|value| letter(value) == c))
                .map(|place| u32::try_from(place.expect("a letter")).expect("small"))
                .collect();
            let mut read = Vec::new();
            let (mut kept, mut bits) = (0_u32, 0_u32);
            for pair in values.chunks(2) {
                kept |= (pair[0] * u32::from(LETTERS) + pair[1]) << bits;
                bits += BITS;
                while bits >= 8 {
                    read.push((kept & 255) as u8);
                    kept >>= 8;
                    bits -= 8;
                }
            }
            read.truncate(length);
            assert_eq!(read, bytes[..length], "{length}");
            assert!(!text.contains(['<', '>', '&', '\n', ' ']), "{length}");
        }
    }

    /// The policy refuses them, and a phone would show nothing amiss.
    #[test]
    fn no_part_has_styles_or_handlers_in_attributes_nor_an_address() {
        for part in [TEMPLATE, EARLY, SCRIPT] {
            for never in [
                "style=\"",
                " onclick=\"",
                " onload=\"",
                "http://",
                "https://",
                "eval(",
            ] {
                assert!(!part.contains(never), "{never}");
            }
        }
        assert!(!STYLE.contains("url("), "a style fetches nothing");
        assert!(
            !STYLE.contains('\r') && ![EARLY, SCRIPT].concat().contains('\r'),
            "the hash is of LF"
        );
    }
}
