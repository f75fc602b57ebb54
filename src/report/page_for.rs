//! For whom a page is.

/// For whom the page is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PageFor {
    /// The report alone.
    #[default]
    Anybody,
    /// A letter to whoever must repair it.
    Landlord,
    /// A list for whoever does the work.
    Contractor,
    /// A record to be signed and kept.
    Record,
    /// The deciding holes at life size, with discs to cut out.
    LifeSize,
}
