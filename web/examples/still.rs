//! Prints the page as plain HTML, for packaging.

fn main() {
    print!("{}", web::still::html());
}
