//! Schedule after schedule, on several threads.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use sillmark::service::{Answers, Cache, ServedLayer};

use super::asked::{Asked, CALM, DISTURBED};
use super::kept;
use crate::service::proxy::{Kind, Proxy, Schedule};

/// Schedules of each service.
const SCHEDULES: u64 = 500;
const THREADS: usize = 4;
/// Beside the limit of the run itself, on a machine that does other things as well.
const MOST: Duration = Duration::from_secs(20);

/// How many runs ended how, and which faults they met.
#[derive(Debug, Default)]
struct Tally {
    endings: BTreeMap<String, u64>,
    met: BTreeMap<Kind, u64>,
    wrong: Vec<String>,
}

/// Runs all schedules; all kinds of faults must be met but those that the service cannot have.
#[allow(clippy::print_stdout)] // what was counted, for whoever asks the test runner to show it
pub(super) fn run_all(asked: &Asked, impossible: &[Kind]) {
    let next = AtomicU64::new(0);
    let mut tally = Tally::default();
    thread::scope(|scope| {
        let work = || {
            let mut own = Tally::default();
            loop {
                let seed = next.fetch_add(1, Ordering::Relaxed);
                if seed >= SCHEDULES {
                    return own;
                }
                own.run(asked, seed);
            }
        };
        let threads: Vec<_> = (0..THREADS).map(|_| scope.spawn(work)).collect();
        for thread in threads {
            tally.merge(thread.join().unwrap());
        }
    });
    println!("{:?}\n{:?}", tally.endings, tally.met);
    let wrong = &tally.wrong;
    assert!(
        wrong.is_empty(),
        "{} of {SCHEDULES}:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    let right = tally.endings.get("Right").copied().unwrap_or_default();
    assert!(0 < right && right < SCHEDULES, "{:?}", tally.endings);
    for kind in Kind::ALL {
        let is_met = tally.met.contains_key(&kind);
        assert_ne!(is_met, impossible.contains(&kind), "{kind:?}");
    }
}

impl Tally {
    fn run(&mut self, asked: &Asked, seed: u64) {
        let proxy = Proxy::start(&asked.upstream, Schedule::new(seed));
        let ending = run(asked, &proxy, seed);
        let met = proxy.met();
        for (kind, _) in &met {
            *self.met.entry(*kind).or_default() += 1;
        }
        match ending {
            Ok(ending) => *self.endings.entry(ending).or_default() += 1,
            Err(wrong) => self
                .wrong
                .push(format!("seed {seed}: {wrong}\n  met {met:?}")),
        }
    }

    fn merge(&mut self, other: Self) {
        for (ending, count) in other.endings {
            *self.endings.entry(ending).or_default() += count;
        }
        for (kind, count) in other.met {
            *self.met.entry(kind).or_default() += count;
        }
        self.wrong.extend(other.wrong);
    }
}

/// How a run ends: `Right`, or the name of its error. What is wrong with it is an error here.
fn run(asked: &Asked, proxy: &Proxy, seed: u64) -> Result<String, String> {
    let folder = tempfile::tempdir().unwrap();
    let cache = Cache::open(folder.path()).unwrap();
    let kept = || Answers::FetchedAndKept(cache.clone());
    let question = asked.question(seed);
    let ask = |answers, limits| asked.features(proxy, &question.boxes, answers, limits);
    let is_right = |when: &str, layer: ServedLayer| {
        if layer == question.right {
            return Ok(());
        }
        let right = &question.right.features;
        let ids: Vec<&str> = layer.features.iter().map(|each| each.id.as_str()).collect();
        let other = right
            .iter()
            .zip(&layer.features)
            .find(|(one, other)| one != other);
        Err(format!("other features {when}: {ids:?}, such as {other:?}"))
    };

    let began = Instant::now();
    let disturbed = ask(kept(), DISTURBED);
    if began.elapsed() > MOST {
        return Err(format!("it took {:?}: {disturbed:?}", began.elapsed()));
    }
    kept::entries(folder.path())?;
    let offline = ask(Answers::Kept(cache.clone()), DISTURBED);
    let ending = match (disturbed, offline) {
        (Ok(layer), Ok(offline)) => {
            is_right("among faults", layer)?;
            is_right("kept among faults", offline)?;
            "Right".to_owned()
        }
        (Ok(_), Err(error)) => return Err(format!("right, but not kept: {error}")),
        (Err(error), offline) => {
            offline.map_or(Ok(()), |layer| is_right("kept by a run that failed", layer))?;
            let name = format!("{error:?}");
            name.split([' ', '(']).next().unwrap_or_default().to_owned()
        }
    };

    proxy.calm();
    let calm = ask(kept(), CALM).map_err(|error| format!("an error without faults: {error}"))?;
    is_right("without faults", calm)?;
    kept::entries(folder.path())?;
    let offline = ask(Answers::Kept(cache.clone()), CALM);
    is_right(
        "kept",
        offline.map_err(|error| format!("not kept: {error}"))?,
    )?;
    Ok(ending)
}
