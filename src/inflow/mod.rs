//! Water that gets past a barrier, and the pump that keeps up with it.
