//! What is seen to before a course and after it: the list, the kit store, the load, the way home.

use super::driver::Window;
use super::open_example;
use std::fs;

/// The keys of WebDriver that leave a field empty, and that enter what was typed.
const BACKSPACE: &str = "\u{e003}";
const ENTER: &str = "\u{e007}";

/// The id of a lot's field: `what` is `good`, `care` and so on.
fn field_of_lot(window: &Window, item: &str, what: &str) -> String {
    let good = window.script(&format!(
        "return [...document.querySelectorAll('#lots tbody tr')]\
         .find((row) => row.querySelector('th')?.textContent.includes({item:?}))\
         ?.querySelector('input').id ?? ''"
    ));
    good.replace("-good", &format!("-{what}"))
}

fn add_lot(window: &Window, item: &str, good: &str) {
    window.type_into("add-item", item);
    window.type_into("add-good", good);
    window.click("add-lot");
    window.wait_until(&format!("{item} is in the store"), || {
        !field_of_lot(window, item, "good").is_empty()
    });
}

/// What the kit place says of a tool: its row and the row below.
fn kit_row(window: &Window, item: &str) -> String {
    window.script(&format!(
        "const row = document.getElementById('change-{item}')?.closest('tr');\
         return (row?.previousElementSibling.textContent ?? '') + row?.textContent"
    ))
}

#[test]
fn a_lot_added_to_the_store_is_had_in_the_kit() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-store");
    add_lot(&window, "Mattock", "3");
    window.click("step-kit");
    window.wait_until("the store's count stands in the field", || {
        window.script("return document.getElementById('field-kit-on_hand-Mattock')?.placeholder")
            == "3"
    });
    assert!(kit_row(&window, "Mattock").contains("in the store"));

    window.type_into("field-kit-on_hand-Mattock", "0");
    window.wait_until("what is typed here comes before the store", || {
        let row = kit_row(&window, "Mattock");
        row.contains("typed here") && row.contains("Borrow 1")
    });
}

#[test]
fn a_lot_is_refused_at_its_field_changed_and_taken_out() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-store");
    add_lot(&window, "Mattock", "3");
    let broken = field_of_lot(&window, "Mattock", "broken");
    window.type_into(&broken, &format!("one{ENTER}"));
    window.wait_for_text(
        &format!("trouble-{broken}"),
        "\"one\" is not a count. Write a whole number",
    );
    window.type_into(&broken, &format!("1{ENTER}"));
    window.wait_until("the store has taken it", || {
        window.text(&format!("trouble-{broken}")).is_empty() && window.value(&broken) == "1"
    });

    window.click(&broken.replace("broken", "more"));
    window.click(&broken.replace("broken", "remove"));
    window.click(&broken.replace("broken", "keep"));
    window.click(&broken.replace("broken", "remove"));
    window.click(&broken.replace("broken", "gone"));
    window.wait_until("nothing is left", || window.text("lots").is_empty());
}

#[test]
fn what_is_ticked_stays_after_saving_and_opening_again() {
    let (_folder, file, window) = open_example();
    window.wait_for_text("step-ready", "to do");
    window.click("done-permission");
    window.wait_for_text("to-do", "done");
    window.click("save");
    window.wait_until("the tick is in the file", || {
        fs::read_to_string(&file).is_ok_and(|text| text.contains("done = [\"permission\"]"))
    });
    drop(window);

    let again = Window::open(&file);
    again.wait_for_text("to-do", "done");
    let ticked =
        "return [...document.querySelectorAll('#to-do :checked')].map((it) => it.id).join()";
    assert_eq!(again.script(ticked), "done-permission");
    again.click("hide-done");
    again.wait_until("it is hidden", || {
        again.text("done-permission").is_empty() && again.script(ticked).is_empty()
    });
}

#[test]
fn a_vehicle_shows_its_run_and_what_is_ticked_is_told() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-load");
    window.click("remove-vehicle-0");
    window.wait_until("the example's van is gone", || {
        window.value("field-vehicle-0-name").is_empty()
    });
    window.click("add-vehicle");
    window.wait_until("a van is there", || {
        window.value("field-vehicle-0-name") == "Van"
    });
    window.type_into("field-vehicle-0-payload", "700");
    window.wait_for_text("trouble-vehicle-0-payload", "is a mass without a unit");
    window.type_into("field-vehicle-0-payload", "700 kg");
    window.wait_for_text("load-told", "All of it goes in one run.");
    window.wait_for_text("run-1", "The load");
    window.click("tick-1-Van-Barrow");
    window.wait_for_text("ticked-1", "1 of ");

    window.type_into("field-vehicle-0-payload", "160 kg");
    window.wait_for_text("load-told", "It takes 2 runs");
    window.wait_for_text("run-2", "Run 2");
}

#[test]
fn what_was_booked_is_counted_home_and_the_store_follows() {
    let (_folder, _file, window) = open_example();
    window.wait_for_text("figure-length", " m");
    window.click("step-store");
    add_lot(&window, "Spade", "4");
    window.click("book");
    window.wait_for_text("standing", "booked for its days");

    window.click("step-load");
    window.type_into("home-broken-Spade", "1");
    let back = || window.value("home-back-Spade");
    window.wait_until("one fewer is back", || back() == "1");
    window.type_into("home-lost-Spade", "two");
    window.click("count-home");
    window.wait_for_text("trouble-home-lost-Spade", "\"two\" is not a count.");
    window.type_into("home-lost-Spade", BACKSPACE);
    window.click("count-home");
    window.wait_for_text("home-told", "Counted home: the store has followed");

    window.click("step-store");
    window.wait_for_text("standing", "counted home on 2027-04-25");
    let count = |what: &str| window.value(&field_of_lot(&window, "Spade", what));
    window.wait_until("one is broken", || count("broken") == "1");
    assert_eq!(count("good"), "3");

    window.click("step-load");
    window.click("not-home");
    window.wait_for_text("home-told", "Taken back");
    window.click("step-store");
    window.wait_until("none is broken", || {
        count("good") == "4" && count("broken").is_empty()
    });
}
