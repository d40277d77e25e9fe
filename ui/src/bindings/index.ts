// The types Rust and the window share.
// Generated from the shapes in Rust by `cargo xtask bindings`. Do not edit.

export * from './window'
export * from './plan'
export * from './written'
