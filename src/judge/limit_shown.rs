//! The limit that a value was compared with, and how.

use std::borrow::Cow;

use crate::quantities::Length;
use crate::quantities::LengthUnit;

/// The limit of a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct LimitShown<'r> {
    /// How the value is compared.
    pub operator: Operator,
    /// The limit as the ruleset writes it.
    pub written: Cow<'r, str>,
    /// The limit as a length, where it is one.
    pub value: Option<Length>,
    /// The unit the ruleset wrote.
    pub unit: Option<LengthUnit>,
}

/// How a value is compared with a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Operator {
    /// More than; equal is not enough.
    Above,
    /// An angle; equal is fine.
    AngleAtLeast,
    /// Equal is fine.
    AtLeast,
    /// Equal is fine.
    AtMost,
    /// Less than; equal is too much.
    Below,
    /// A probe of the torso must not pass where a ball of the head's size does not.
    Entraps,
    /// One of these words.
    Is,
    /// None of these words.
    IsNot,
    /// No two footholds nearer to each other than this.
    LadderBelow,
    /// No two footholds up to this from each other.
    LadderUpTo,
    /// No foothold within this zone; its ends belong to it.
    NoneWithin,
    /// Not inside this band; its ends are outside.
    NotWithin,
    /// A ball of this size must not pass; equal is a failure.
    StopsBall,
}

impl Operator {
    /// The key in a ruleset.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Operator::Above => "above",
            Operator::AngleAtLeast => "angle-at-least",
            Operator::AtLeast => "at-least",
            Operator::AtMost => "at-most",
            Operator::Below => "below",
            Operator::Entraps => "entraps",
            Operator::Is => "is",
            Operator::IsNot => "is-not",
            Operator::LadderBelow => "ladder-below",
            Operator::LadderUpTo => "ladder-up-to",
            Operator::NoneWithin => "none-within",
            Operator::NotWithin => "not-within",
            Operator::StopsBall => "stops-ball",
        }
    }
}
