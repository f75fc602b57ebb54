//! Rulesets that a survey itself names: a file only beside the survey or below it,
//! so that a survey from somebody else reads nothing else of this computer.

use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use crate::cli::codes;
use crate::input::Diagnostic;
use crate::rules;
use crate::survey::NamedRules;

/// The same name, as a path from here where it is a file beside the survey.
///
/// # Errors
/// Where it is a file elsewhere.
pub(super) fn beside_the_survey(
    named: &NamedRules,
    surveys: &[PathBuf],
) -> Result<NamedRules, Box<Diagnostic>> {
    if rules::embedded_ids().any(|id| id == named.name) {
        return Ok(named.clone());
    }
    let folder = folder_of(named.at.file(), surveys);
    let inside = Path::new(&named.name);
    let plain = |step: Component<'_>| matches!(step, Component::Normal(_) | Component::CurDir);
    let full = folder.join(inside);
    let is_within = match (full.canonicalize(), folder.canonicalize()) {
        (Ok(full), Ok(folder)) => full.starts_with(folder),
        // no such file there: one of this name elsewhere is not meant
        (Err(_), _) | (_, Err(_)) => !inside.exists(),
    };
    if !inside.components().all(plain) || !is_within {
        let message = format!(
            "the survey names the ruleset {}, which does not lie beside it or below",
            named.name
        );
        return Err(Box::new(
            Diagnostic::error(codes::RULES_ELSEWHERE, message, named.at.clone()).help(
                "copy the file beside the survey, or name it on the command line: --rules FILE",
            ),
        ));
    }
    Ok(NamedRules {
        name: if full.exists() {
            full.display().to_string()
        } else {
            named.name.clone()
        },
        at: named.at.clone(),
    })
}

/// The folder of the survey that is called so in messages; a sheet is called by
/// its workbook first, and standard input stands where the command is typed.
pub(super) fn folder_of(file: &str, surveys: &[PathBuf]) -> PathBuf {
    let of_file = |path: &&PathBuf| {
        let name = path.display().to_string();
        file.strip_prefix(&name)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(", "))
    };
    let longest = surveys
        .iter()
        .filter(of_file)
        .max_by_key(|path| path.as_os_str().len());
    match longest.and_then(|path| path.parent()) {
        Some(folder) if folder != Path::new("") => folder.to_owned(),
        Some(_) | None => PathBuf::from("."),
    }
}
