//! A third reading, only where something wrong has a place far behind: the rows
//! that diagnostics speak of, as they stand.

use std::collections::HashMap;

use crate::input::Excerpt;
use crate::survey;
use crate::survey::FileError;
use crate::survey::complaints::Complaints;
use crate::survey::complaints::RowSpot;
use crate::survey::complaints::SpotMark;
use crate::survey::header::Header;
use crate::survey::header::Layout;
use crate::survey::heading::HeaderColumn;
use crate::survey::reader::RowReader;
use crate::survey::row::SurveyRow;
use crate::survey::stream::Saved;

/// The rows of these spots, marked.
pub(super) fn look_up(
    files: &[Saved<'_>],
    spots: &[RowSpot],
) -> Result<HashMap<(survey::RowPlace, SpotMark), Excerpt>, FileError> {
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
        let fault = FileError::of(file.file);
        let Some(mut reader) = RowReader::open(*file, index, &mut said).map_err(&fault)? else {
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

fn marked(row: &SurveyRow<'_>, header: &Header, mark: SpotMark) -> Excerpt {
    let column = match (mark, header.layout) {
        (SpotMark::Building, _) => header.building,
        (SpotMark::Guard, _) => header.guard,
        (SpotMark::Unit, _) => header.unit,
        (SpotMark::Item(_), Layout::Notebook { reading, .. }) => Some(reading),
        (SpotMark::Item(item), Layout::Table) => {
            let of_item =
                |column: &HeaderColumn| matches!(column, HeaderColumn::Of(i, _) if *i == item);
            header.columns.iter().position(of_item)
        }
    };
    column.map_or_else(|| row.excerpt_whole(), |column| row.excerpt(column))
}
