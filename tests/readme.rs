//! The commands of README.md with their real output.

#[test]
fn the_examples_of_the_readme_are_real() {
    trycmd::TestCases::new().case("README.md");
}
