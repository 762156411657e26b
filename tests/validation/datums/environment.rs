//! Grid folders named by the environment.

use super::*;

/// The environment, in a process of its own: this test runs itself again.
#[test]
fn grids_by_environment() {
    const NAME: &str = "datums::environment::grids_by_environment";
    const CHILD: &str = "SILLMARK_TEST_CHILD";
    if std::env::var_os(CHILD).is_some() {
        let datums = Datums::new(DatumSettings::default());
        let shifted = datums
            .and_then(|datums| datums.convert(metres(0.0, Ngvd29), Navd88, place(-80.0, 40.0)));
        match shifted {
            Ok(converted) => say(&format!("<{:.2}>", height(&converted))),
            Err(error) => say(&format!("<{error}>")),
        }
        return;
    }
    let Some(folder) = open_data("grids") else {
        return;
    };
    let empty = tempfile::tempdir().unwrap();
    let run = |variables: &[(&str, &Path)]| {
        let mut command = Command::new(std::env::current_exe().unwrap());
        command
            .args(["--exact", NAME, "--nocapture"])
            .env(CHILD, "1");
        for name in [GRIDS_VARIABLE, "PROJ_DATA", "PROJ_LIB"] {
            command.env_remove(name);
        }
        command.env("PROJ_USER_WRITABLE_DIRECTORY", empty.path());
        command.envs(variables.iter().copied());
        let output = command.output().unwrap();
        String::from_utf8(output.stderr).unwrap()
    };
    for name in [
        GRIDS_VARIABLE,
        "PROJ_DATA",
        "PROJ_LIB",
        "PROJ_USER_WRITABLE_DIRECTORY",
    ] {
        let said = run(&[(name, &folder)]);
        assert!(said.contains("<-0.15>"), "{name}: {said}");
    }
    let said = run(&[]);
    assert!(said.contains("needs us_noaa_vertcone.tif"), "{said}");
    // Our own variable wins.
    let said = run(&[(GRIDS_VARIABLE, empty.path()), ("PROJ_DATA", &folder)]);
    assert!(said.contains("needs us_noaa_vertcone.tif"), "{said}");
    let said = run(&[(GRIDS_VARIABLE, Path::new("no/such/folder"))]);
    assert!(
        said.contains("SILLMARK_GRIDS: \"no/such/folder\" is not a folder"),
        "{said}"
    );
}
