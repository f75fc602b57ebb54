//! Which building, unit and guard a row belongs to.

use crate::survey::header::Header;
use crate::survey::names::NameId;
use crate::survey::names::SURVEY;
use crate::survey::row::SurveyRow;

/// Which names a row belongs to; a blank one is a name too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Belonging {
    pub(super) building: NameId,
    pub(super) unit: NameId,
    /// `None` for a row of facts.
    pub(super) guard: Option<NameId>,
}

/// Finds the place of one row after another; most rows name the same guard as
/// the row before.
#[derive(Debug, Default)]
pub(super) struct Locator {
    /// The names of the last row as they stand.
    before: String,
    /// How much of them is building and unit, where the guard comes last.
    unit_length: Option<usize>,
    place: Option<Belonging>,
}

impl Locator {
    /// The place of a row; `name` looks up or enters a name. `None` where a
    /// name cannot be trusted, or `name` knows none.
    pub(super) fn locate(
        &mut self,
        row: &SurveyRow<'_>,
        header: &Header,
        mut name: impl FnMut(NameId, &str, Option<usize>) -> Option<NameId>,
    ) -> Option<Belonging> {
        let columns = [header.building, header.unit, header.guard];
        if !columns
            .into_iter()
            .flatten()
            .all(|column| row.is_trusted(column))
        {
            return None;
        }
        let names = names_as_they_stand(row, header);
        if let (Some(names), Some(place)) = (names, self.place)
            && names == self.before
        {
            return Some(place);
        }
        let unit_length = names.and_then(|_| unit_length(row, header));
        let (building, unit) = match self.unit_before(row, unit_length) {
            Some(place) => (place.building, place.unit),
            None => {
                let building = name(SURVEY, &row.cell_of(header.building), header.building)?;
                let unit = name(building, &row.cell_of(header.unit), header.unit)?;
                (building, unit)
            }
        };
        let guard = row.cell_of(header.guard);
        let guard = if guard.is_empty() {
            None
        } else {
            Some(name(unit, &guard, header.guard)?)
        };
        let place = Belonging {
            building,
            unit,
            guard,
        };
        self.place = names.is_some().then_some(place);
        self.unit_length = unit_length;
        self.before.clear();
        self.before.push_str(names.unwrap_or_default());
        Some(place)
    }

    /// The names of the last row as they stand; empty if they do not stand in front.
    pub(super) fn names(&self) -> &str {
        &self.before
    }

    /// The last row's place, where this row names the same building and unit.
    fn unit_before(&self, row: &SurveyRow<'_>, unit_length: Option<usize>) -> Option<Belonging> {
        let length = unit_length?;
        let same = unit_length == self.unit_length
            && row.text.as_bytes().get(..length) == self.before.as_bytes().get(..length);
        self.place.filter(|_| same)
    }

    /// Forgets the last row, as another file has other columns.
    pub(super) fn forget(&mut self) {
        self.before.clear();
        self.place = None;
    }
}

/// The text of the cells that hold names, where all of them stand in front.
fn names_as_they_stand<'r>(row: &SurveyRow<'r>, header: &Header) -> Option<&'r str> {
    let named = [header.building, header.unit, header.guard]
        .into_iter()
        .flatten()
        .count();
    if named == 0 || named != header.names {
        return None;
    }
    let last = row.cells.get(named - 1)?;
    row.text.get(..last.range().end)
}

/// How many bytes in front hold building and unit, where a guard's name follows them.
fn unit_length(row: &SurveyRow<'_>, header: &Header) -> Option<usize> {
    let guard = header.guard.filter(|guard| guard + 1 == header.names)?;
    Some(row.cells.get(guard)?.range().start)
}
