//! The terminal program as people and scripts call it: its answers, its refusals, its exit codes.

#[path = "terminal/calls.rs"]
mod calls;
#[path = "terminal/plan_json.rs"]
mod plan_json;
#[path = "terminal/saving.rs"]
mod saving;
#[path = "terminal/store.rs"]
mod store;
