//! Which building, unit and guard a row belongs to.

use crate::survey::header::Header;
use crate::survey::names::NameId;
use crate::survey::names::SURVEY;
use crate::survey::row::Row;

/// Which names a row belongs to; a blank one is a name too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place {
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
    place: Option<Place>,
}

impl Locator {
    /// The place of a row; `name` looks up or enters a name. `None` where a
    /// name cannot be trusted, or `name` knows none.
    pub(super) fn locate(
        &mut self,
        row: &Row<'_>,
        header: &Header,
        mut name: impl FnMut(NameId, &str, Option<usize>) -> Option<NameId>,
    ) -> Option<Place> {
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
        let building = name(SURVEY, &row.cell_of(header.building), header.building)?;
        let unit = name(building, &row.cell_of(header.unit), header.unit)?;
        let guard = row.cell_of(header.guard);
        let guard = if guard.is_empty() {
            None
        } else {
            Some(name(unit, &guard, header.guard)?)
        };
        let place = Place {
            building,
            unit,
            guard,
        };
        self.place = names.is_some().then_some(place);
        self.before.clear();
        self.before.push_str(names.unwrap_or_default());
        Some(place)
    }

    /// Forgets the last row, as another file has other columns.
    pub(super) fn forget(&mut self) {
        self.place = None;
    }
}

/// The text of the cells that hold names, where all of them stand in front.
fn names_as_they_stand<'r>(row: &Row<'r>, header: &Header) -> Option<&'r str> {
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
