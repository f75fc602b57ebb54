//! A third reading, only where something wrong has a place far behind: the rows
//! that diagnostics speak of, as they stand.

use std::collections::HashMap;

use crate::input::Excerpt;
use crate::survey;
use crate::survey::FileError;
use crate::survey::SurveyFile;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::Mark;
use crate::survey::complaints::Spot;
use crate::survey::header::Column;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::reader::RowReader;
use crate::survey::row::Row;

/// The rows of these spots, marked.
pub(super) fn look_up(
    files: &[Box<dyn SurveyFile>],
    spots: &[Spot],
) -> Result<HashMap<(survey::Row, Mark), Excerpt>, FileError> {
    let mut found = HashMap::new();
    for (index, file) in (0_u32..).zip(files) {
        let mut wanted = spots
            .iter()
            .filter(|spot| spot.row.file == index)
            .peekable();
        if wanted.peek().is_none() {
            continue;
        }
        let mut said = Complaints::unheard();
        let fault = FileError::of(&**file);
        let Some(mut reader) = RowReader::open(&**file, index, &mut said).map_err(&fault)? else {
            continue;
        };
        let header = std::sync::Arc::clone(&reader.header);
        while wanted.peek().is_some() {
            let Some(row) = reader.next(&mut said).map_err(&fault)? else {
                break;
            };
            while let Some(spot) = wanted.next_if(|spot| spot.row <= row.at) {
                if spot.row == row.at {
                    found.insert((spot.row, spot.mark), marked(&row, &header, spot.mark));
                }
            }
        }
    }
    Ok(found)
}

fn marked(row: &Row<'_>, header: &Header, mark: Mark) -> Excerpt {
    let column = match (mark, header.layout) {
        (Mark::Building, _) => header.building,
        (Mark::Guard, _) => header.guard,
        (Mark::Unit, _) => header.unit,
        (Mark::Item(_), Layout::Notebook { reading, .. }) => Some(reading),
        (Mark::Item(item), Layout::Table) => {
            let of_item = |column: &Column| matches!(column, Column::Of(i, _) if *i == item);
            header.columns.iter().position(of_item)
        }
    };
    column.map_or_else(|| row.excerpt_whole(), |column| row.excerpt(column))
}
