package galena.desk.page;

import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;

/** Long work, one after the other in the background. It is the notebook's, not a page's: a page may be closed and opened meanwhile. */
final class Jobs implements AutoCloseable {
    private static final double STEP = 0.01;

    /** What is to be done. */
    interface Work {
        Slip run(Progress progress) throws Exception;
    }

    enum State {
        WAITING,
        RUNNING,
        DONE,
        STOPPED,
        FAILED
    }

    /**
     * Work as it stands. @param digest of the build it was asked of @param said why it failed, or what it is at
     */
    record Job(long id, String kind, String digest, State state, double share, String said, Optional<Slip> slip) {
        boolean isOpen() {
            return state == State.WAITING || state == State.RUNNING;
        }
    }

    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "long work");
        thread.setDaemon(true);
        return thread;
    });
    private final Map<Long, Job> jobs = new LinkedHashMap<>();
    private final Map<Long, Boolean> stopping = new LinkedHashMap<>();
    private final Consumer<Job> changed;
    private final Consumer<Exception> faults;
    private long next = 1;

    /** @param changed told of every change, in order @param faults told of what went wrong inside */
    Jobs(Consumer<Job> changed, Consumer<Exception> faults) {
        this.changed = changed;
        this.faults = faults;
    }

    /** Starts work, unless the same kind is at it already: then that goes on. */
    synchronized Job start(String kind, String digest, Work work) {
        for (Job job : jobs.values()) if (job.kind().equals(kind) && job.isOpen()) return job;
        jobs.values().removeIf(job -> job.kind().equals(kind) && job.slip().isEmpty());
        Job job = new Job(next++, kind, digest, State.WAITING, 0, "waiting for other work", Optional.empty());
        jobs.put(job.id(), job);
        stopping.put(job.id(), false);
        changed.accept(job);
        worker.execute(() -> run(job, work));
        return job;
    }

    private void run(Job job, Work work) {
        Progress progress = new Progress() {
            private double told = -1;
            private String saying = "";

            @Override
            public void at(double share, String doing) {
                if (Math.abs(share - told) < STEP && doing.equals(saying)) return;
                told = share;
                saying = doing;
                set(new Job(job.id(), job.kind(), job.digest(), State.RUNNING, share, doing, Optional.empty()));
            }

            @Override
            public boolean cancelled() {
                return isStopping(job.id());
            }
        };
        try {
            if (progress.cancelled()) throw new CancellationException();
            progress.at(0, "beginning");
            Slip slip = work.run(progress);
            end(job, State.DONE, slip.lead(), Optional.of(slip));
        } catch (CancellationException stopped) {
            end(job, State.STOPPED, "stopped", Optional.empty());
        } catch (BadInputException bad) {
            end(job, State.FAILED, String.valueOf(bad.getMessage()), Optional.empty());
        } catch (galena.build.predict.NoOperatingPoint | galena.build.predict.Running.NotRunning none) {
            end(job, State.FAILED, String.valueOf(none.getMessage()), Optional.empty());
        } catch (Exception fault) {
            faults.accept(fault);
            end(job, State.FAILED, "a fault in Galena; its terminal says more", Optional.empty());
        }
    }

    private void end(Job job, State state, String said, Optional<Slip> slip) {
        synchronized (this) {
            if (slip.isPresent()) jobs.values().removeIf(old -> old.kind().equals(job.kind()) && old.id() != job.id());
        }
        set(new Job(job.id(), job.kind(), job.digest(), state, slip.isPresent() ? 1 : 0, said, slip));
    }

    private synchronized void set(Job job) {
        jobs.put(job.id(), job);
        changed.accept(job);
    }

    private synchronized boolean isStopping(long id) {
        return stopping.getOrDefault(id, true);
    }

    /**
     * Asks work to stop, which it does within a tenth of a second; takes the answer of work that has ended away. False when there is
     * none of that number.
     */
    synchronized boolean stop(long id) {
        Job job = jobs.get(id);
        if (job == null) return false;
        if (job.isOpen()) stopping.put(id, true);
        else jobs.remove(id);
        return true;
    }

    synchronized Optional<Job> find(long id) {
        return Optional.ofNullable(jobs.get(id));
    }

    /** The last of a kind that has an answer. */
    synchronized Optional<Job> answered(String kind) {
        return jobs.values().stream()
                .filter(job -> job.kind().equals(kind) && job.slip().isPresent())
                .reduce((first, second) -> second);
    }

    /** Oldest first. */
    synchronized List<Job> all() {
        return new ArrayList<>(jobs.values());
    }

    @Override
    public void close() {
        synchronized (this) {
            stopping.replaceAll((id, stop) -> true);
        }
        worker.shutdownNow();
    }
}
