//! A large survey judged on several threads and written in its order: a guard is judged by
//! itself, whatever came before it.

use std::collections::VecDeque;
use std::io;
use std::num::NonZero;
use std::sync::Arc;
use std::sync::Mutex;
use std::sync::mpsc::Receiver;
use std::sync::mpsc::SyncSender;
use std::sync::mpsc::sync_channel;
use std::thread;

use crate::judge::judge;
use crate::report;
use crate::report::GuardsWritten;
use crate::report::JudgedGuard;
use crate::report::Report;
use crate::report::ReportBasis;
use crate::survey::Guard;
use crate::survey::Survey;

/// Of fewer guards all are judged before another thread has begun.
const FEW: usize = 500;

/// So many guards are handed over at once.
const BATCH: usize = 32;

/// Guards to be judged, and where they are wanted.
struct Job<'r> {
    guards: Vec<Guard>,
    done: SyncSender<Vec<JudgedGuard<'r>>>,
}

/// As [`report::write_guards`], on so many threads: this one reads and writes, the others
/// judge.
///
/// # Errors
/// Those of the report's writer.
pub(super) fn write_guards<'r>(
    survey: &Survey<'_>,
    basis: &ReportBasis<'r>,
    is_wanted: &dyn Fn(&Guard) -> bool,
    report: &mut dyn Report,
    threads: NonZero<usize>,
) -> io::Result<GuardsWritten> {
    let judges = threads.get() - 1;
    if judges == 0 || survey.guard_count() < FEW {
        return report::write_guards(survey, basis, is_wanted, report);
    }
    thread::scope(|scope| {
        let (jobs, queue) = sync_channel::<Job<'r>>(judges);
        // the threads hold the only ends to take from: what is sent to none fails
        let queue = Arc::new(Mutex::new(queue));
        for _ in 0..judges {
            let queue = Arc::clone(&queue);
            scope.spawn(move || judge_all(&queue, basis));
        }
        drop(queue);
        let mut line = InLine {
            jobs,
            begun: VecDeque::new(),
            most: 2 * judges,
            batch: Vec::with_capacity(BATCH),
            report,
        };
        let written = report::each_guard(survey, is_wanted, &mut |guard| line.take(guard))?;
        line.finish()?;
        Ok(written)
    })
}

/// Judges what comes until nothing more does.
fn judge_all<'r>(queue: &Mutex<Receiver<Job<'r>>>, basis: &ReportBasis<'r>) {
    loop {
        let next = queue.lock().map(|queue| queue.recv());
        let Ok(Ok(Job { guards, done })) = next else {
            return;
        };
        let judged = guards.into_iter().map(|guard| JudgedGuard {
            judged: judge(&guard, basis.survey, basis.rulesets, basis.options),
            guard,
        });
        // nobody waits for it any more where the report could not be written
        let _ = done.send(judged.collect());
    }
}

/// Guards in their order, being judged.
struct InLine<'w, 'r> {
    jobs: SyncSender<Job<'r>>,
    begun: VecDeque<Receiver<Vec<JudgedGuard<'r>>>>,
    /// More are not begun before the first one is written.
    most: usize,
    batch: Vec<Guard>,
    report: &'w mut dyn Report,
}

impl InLine<'_, '_> {
    fn take(&mut self, guard: Guard) -> io::Result<()> {
        self.batch.push(guard);
        if self.batch.len() < BATCH {
            return Ok(());
        }
        self.hand_over()?;
        if self.begun.len() > self.most {
            self.write_first()?;
        }
        Ok(())
    }

    fn hand_over(&mut self) -> io::Result<()> {
        let (done, begun) = sync_channel(1);
        let guards = std::mem::replace(&mut self.batch, Vec::with_capacity(BATCH));
        self.jobs
            .send(Job { guards, done })
            .map_err(|_| stopped())?;
        self.begun.push_back(begun);
        Ok(())
    }

    fn write_first(&mut self) -> io::Result<()> {
        let Some(first) = self.begun.pop_front() else {
            return Ok(());
        };
        for entry in first.recv().map_err(|_| stopped())? {
            self.report.guard(&entry)?;
        }
        Ok(())
    }

    fn finish(mut self) -> io::Result<()> {
        self.hand_over()?;
        while !self.begun.is_empty() {
            self.write_first()?;
        }
        Ok(())
    }
}

/// A thread that judges ended before its time, which only a fault of ours can do.
fn stopped() -> io::Error {
    io::Error::other("a guard could not be judged: this is a fault of guardrule")
}
