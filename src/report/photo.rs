//! Photographs that a survey names.

/// A photograph, made small and without what its camera wrote into it.
#[derive(Clone, Debug)]
pub struct PhotoShown {
    /// The picture as JPEG, in base64.
    pub jpeg: String,
    /// How wide it is, in pixels.
    pub wide: u32,
    /// How high it is, in pixels.
    pub high: u32,
}

/// Where photographs come from.
pub trait PhotoSource {
    /// The photograph that a survey names, or why there is none to show.
    ///
    /// # Errors
    /// Why it cannot be shown, in a few words.
    fn photo(&mut self, survey: &str, written: &str) -> Result<PhotoShown, String>;
}
