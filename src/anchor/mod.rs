//! Anchorage to concrete: what a group of anchors has to carry and what it can.
