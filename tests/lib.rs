//! Checks of the whole against the outside; see `outside/` and `browser/`.
