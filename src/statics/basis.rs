//! Where a number comes from.

/// How far a source was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Status {
    /// Worked out from mechanics, formula given.
    Computed,
    /// From memory; to be verified before it is called firm.
    Memory,
    /// Read in the text itself.
    Published,
    /// Read second-hand: a transcription, a quotation, a public data file.
    Quoted,
}

impl Status {
    /// The word for a reader: `computed`, `memory`, `published`, `quoted`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Status::Computed => "computed",
            Status::Memory => "memory",
            Status::Published => "published",
            Status::Quoted => "quoted",
        }
    }
}

/// A source with its status.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Basis {
    /// The text, with clause or table.
    pub source: &'static str,
    /// How far it was read.
    pub status: Status,
}

impl Basis {
    /// Elementary mechanics.
    pub const MECHANICS: Basis = Basis::computed("elementary statics and strength of materials");

    /// Worked out from mechanics.
    #[must_use]
    pub const fn computed(source: &'static str) -> Basis {
        Basis {
            source,
            status: Status::Computed,
        }
    }

    /// From memory.
    #[must_use]
    pub const fn memory(source: &'static str) -> Basis {
        Basis {
            source,
            status: Status::Memory,
        }
    }

    /// Read in the text itself.
    #[must_use]
    pub const fn published(source: &'static str) -> Basis {
        Basis {
            source,
            status: Status::Published,
        }
    }

    /// Read second-hand.
    #[must_use]
    pub const fn quoted(source: &'static str) -> Basis {
        Basis {
            source,
            status: Status::Quoted,
        }
    }
}

/// A number with where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sourced<T> {
    /// The number.
    pub value: T,
    /// Its source.
    pub basis: Basis,
}

impl<T> Sourced<T> {
    /// A number and its source.
    pub const fn new(value: T, basis: Basis) -> Sourced<T> {
        Sourced { value, basis }
    }
}
