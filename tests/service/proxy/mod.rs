//! A proxy on loopback that stands between a client and a server, and spoils what comes back.

mod check;
mod fault;
mod heard;
mod random;
mod schedule;
mod send;
mod spoil;
mod upstream;

use std::collections::HashMap;
use std::io;
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::thread;

use self::fault::Fault;
pub(crate) use self::fault::Kind;
use self::heard::Heard;
pub(crate) use self::schedule::Schedule;
use self::send::Sending;
pub(crate) use self::upstream::Upstream;
use self::upstream::{OWN_ADDRESS, Original};

/// A proxy; it ends when it is dropped.
pub(crate) struct Proxy {
    at: SocketAddr,
    inner: Arc<Inner>,
}

struct Inner {
    own_address: String,
    upstream: Arc<Upstream>,
    schedule: Schedule,
    calm: AtomicBool,
    ended: AtomicBool,
    /// How often each question was asked.
    times: Mutex<HashMap<String, u32>>,
    met: Mutex<Vec<(Kind, String)>>,
}

impl Proxy {
    pub(crate) fn start(upstream: &Arc<Upstream>, schedule: Schedule) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let at = listener.local_addr().unwrap();
        let inner = Arc::new(Inner {
            own_address: format!("http://{at}"),
            upstream: Arc::clone(upstream),
            schedule,
            calm: AtomicBool::new(false),
            ended: AtomicBool::new(false),
            times: Mutex::default(),
            met: Mutex::default(),
        });
        let serving = Arc::clone(&inner);
        thread::spawn(move || {
            for stream in listener.incoming() {
                if serving.ended.load(Ordering::SeqCst) {
                    break;
                }
                let serving = Arc::clone(&serving);
                // Nobody has to listen to the end.
                thread::spawn(move || stream.and_then(|stream| serving.answer(stream)));
            }
        });
        Self { at, inner }
    }

    pub(crate) fn address(&self) -> &str {
        &self.inner.own_address
    }

    /// From now on there are no faults.
    pub(crate) fn calm(&self) {
        self.inner.calm.store(true, Ordering::SeqCst);
    }

    /// The faults so far, each with the question that met it.
    pub(crate) fn met(&self) -> Vec<(Kind, String)> {
        self.inner.met.lock().unwrap().clone()
    }
}

impl Drop for Proxy {
    fn drop(&mut self) {
        self.inner.ended.store(true, Ordering::SeqCst);
        // Whom it waits for.
        let _ = TcpStream::connect(self.at);
    }
}

impl Inner {
    fn answer(&self, mut stream: TcpStream) -> io::Result<()> {
        let Some(heard) = Heard::read(&stream) else {
            return Ok(());
        };
        self.sending(&heard).send(&mut stream)
    }

    fn sending(&self, heard: &Heard) -> Sending {
        let original = self.original(heard);
        let question = heard.question();
        if let Some(fault) = self.fault(&question) {
            let earlier = heard.earlier_page().map(|page| self.original(&page).body);
            let spoilt = spoil::spoilt(&fault, heard, &original, earlier.as_deref());
            let sending = match spoilt {
                Some(spoilt) => Some(Sending::whole(&self.named(spoilt))),
                None => Sending::faulty(&fault, heard, &original),
            };
            if let Some(sending) = sending {
                self.met.lock().unwrap().push((fault.kind, question));
                return sending;
            }
        }
        match (heard.header("if-none-match"), &original.etag) {
            (Some(known), Some(etag)) if known == etag => Sending::not_modified(&original),
            _ => Sending::whole(&original),
        }
    }

    fn original(&self, heard: &Heard) -> Original {
        self.named(Original::clone(&self.upstream.answer(heard)))
    }

    /// With the proxy's address in its links.
    fn named(&self, original: Original) -> Original {
        Original {
            body: original.body.replace(OWN_ADDRESS, &self.own_address),
            etag: original.etag.filter(|_| self.schedule.tags),
            ..original
        }
    }

    fn fault(&self, question: &str) -> Option<Fault> {
        if self.calm.load(Ordering::SeqCst) {
            return None;
        }
        let mut times = self.times.lock().unwrap();
        let time = times.entry(question.to_owned()).or_insert(0);
        *time += 1;
        self.schedule.fault(question, *time)
    }
}
