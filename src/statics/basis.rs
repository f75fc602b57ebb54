//! Where a number comes from.

/// How far a source was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HowRead {
    /// Worked out from mechanics, formula given.
    Computed,
    /// From memory; to be verified before it is called firm.
    Memory,
    /// Read in the text itself.
    Published,
    /// Read second-hand: a transcription, a quotation, a public data file.
    Quoted,
}

impl HowRead {
    /// The word for a reader: `computed`, `memory`, `published`, `quoted`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            HowRead::Computed => "computed",
            HowRead::Memory => "memory",
            HowRead::Published => "published",
            HowRead::Quoted => "quoted",
        }
    }
}

/// A source with its status.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Provenance {
    /// The text, with clause or table.
    pub source: &'static str,
    /// How far it was read.
    pub status: HowRead,
}

impl Provenance {
    /// Elementary mechanics.
    pub const MECHANICS: Provenance =
        Provenance::computed("elementary statics and strength of materials");

    /// Worked out from mechanics.
    #[must_use]
    pub const fn computed(source: &'static str) -> Provenance {
        Provenance {
            source,
            status: HowRead::Computed,
        }
    }

    /// From memory.
    #[must_use]
    pub const fn memory(source: &'static str) -> Provenance {
        Provenance {
            source,
            status: HowRead::Memory,
        }
    }

    /// Read in the text itself.
    #[must_use]
    pub const fn published(source: &'static str) -> Provenance {
        Provenance {
            source,
            status: HowRead::Published,
        }
    }

    /// Read second-hand.
    #[must_use]
    pub const fn quoted(source: &'static str) -> Provenance {
        Provenance {
            source,
            status: HowRead::Quoted,
        }
    }
}

/// A number with where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The number.
    pub value: T,
    /// Its source.
    pub basis: Provenance,
}

impl<T> Sourced<T> {
    /// A number and its source.
    pub const fn new(value: T, basis: Provenance) -> Sourced<T> {
        Sourced { value, basis }
    }
}
