package galena.desk.page;

import galena.build.folder.BuildFolder;
import galena.build.folder.LogEntry;
import galena.build.folder.Overlay;
import galena.build.predict.Live;
import galena.build.predict.Moment;
import galena.build.predict.NoOperatingPoint;
import galena.build.predict.Predict;
import galena.build.predict.Prediction;
import galena.build.predict.Progress;
import galena.build.source.BadInputException;
import galena.build.source.Edit;
import galena.build.source.Problem;
import galena.engine.steady.Accuracy;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/**
 * One opened build: the folder as it stands on the disk, what the page lays over it, and the carrier kept solved. Every change gives the
 * notebook a new revision, solves the carrier at once, and has the slower parts of the picture follow: the modulation curve, then
 * the whole prediction with its intervals. A newer change stops what an older one began. For any number of threads.
 */
public final class Notebook implements AutoCloseable {
    private static final int LOOK_MILLISECONDS = 400;
    private static final int WHOLE_AFTER_MILLISECONDS = 300;

    private final Path path;
    private final Clock clock;
    private final Consumer<Exception> faults;
    private final Listeners listeners = new Listeners();
    private final Jobs jobs;
    private final Drawn drawn;
    private final History history;
    private final Live live = new Live(Accuracy.CERTIFIED);
    private final ScheduledExecutorService later = Executors.newScheduledThreadPool(2, work -> {
        Thread thread = new Thread(work, "notebook");
        thread.setDaemon(true);
        return thread;
    });

    private BuildFolder folder;
    private Laid laid;
    private final AtomicLong revision = new AtomicLong(1);
    /** Counted when the carrier is solved anew, under the lock, and read by what may have to stop; a noted reading leaves it. */
    private final AtomicLong solved = new AtomicLong();

    private Disk disk;
    private List<Problem> troubles = List.of();
    private Optional<Moment> moment = Optional.empty();
    private Optional<String> stale = Optional.empty();
    private Optional<Prediction> whole = Optional.empty();
    private double milliseconds;
    private Optional<Future<?>> looking = Optional.empty();
    private Optional<Future<?>> curve = Optional.empty();
    private Optional<Future<?>> completing = Optional.empty();

    private Notebook(BuildFolder folder, Clock clock, Consumer<Exception> faults) throws IOException {
        this.folder = folder;
        this.path = folder.folder();
        this.clock = clock;
        this.faults = faults;
        this.history = History.of(path);
        history.settle(
                edit -> Whole.is(edit) ? Whole.standing(folder, edit) : NotebookJson.text(folder.build(), edit.path()));
        this.disk = Disk.of(path);
        this.laid = Laid.kept(path);
        this.jobs = new Jobs(job -> listeners.tell("job", JobJson.of(job)), faults);
        this.drawn = new Drawn(path, () -> listeners.tell("schematic", "{}"), faults);
    }

    /**
     * Opens a build and solves it once.
     *
     * @param clock that dates edits and readings
     * @param faults hears what went wrong inside
     * @throws BadInputException with every problem in every file
     */
    public static Notebook open(Path folder, Clock clock, Consumer<Exception> faults)
            throws BadInputException, IOException {
        Notebook notebook = new Notebook(BuildFolder.open(folder), clock, faults);
        synchronized (notebook) {
            notebook.solve();
        }
        notebook.looking = Optional.of(notebook.later.scheduleWithFixedDelay(
                notebook::lookQuietly, LOOK_MILLISECONDS, LOOK_MILLISECONDS, TimeUnit.MILLISECONDS));
        return notebook;
    }

    Listeners listeners() {
        return listeners;
    }

    /** The schematic to write on; empty while it is being placed, which begins when it is first asked for. */
    synchronized Optional<String> schematic() {
        drawn.of(folder.build());
        return drawn.svg();
    }

    Jobs jobs() {
        return jobs;
    }

    synchronized BuildFolder folder() {
        return folder;
    }

    /** Tells every page what has become of the long work. */
    synchronized void tellState() {
        listeners.tell("state", state());
    }

    /** What is laid over the build at present. */
    synchronized Overlay overlay() {
        return laid.over(folder);
    }

    /** The prediction with its intervals, once it is there. */
    synchronized Optional<Prediction> whole() {
        return whole;
    }

    /** The page's whole state but the picture, as JSON. */
    synchronized String state() {
        return NotebookJson.of(new NotebookJson.View(
                revision.get(), folder, laid, troubles, history, jobs.all(), moment.map(Moment::prediction), whole));
    }

    /** The last true picture, as JSON; empty before the first. */
    synchronized Optional<String> picture() {
        return moment.map(m -> PictureJson.of(revision.get(), folder.build().intent(), m, milliseconds, stale, whole));
    }

    /** What a part, an adjustment or a condition is and does, as JSON; empty when there is none of that name. */
    synchronized Optional<String> note(String name) {
        return PartNote.of(folder, moment.flatMap(Moment::running), name);
    }

    /** Lays something else over the build; the new picture. */
    synchronized Optional<String> lay(UnaryOperator<Laid> change) {
        Laid changed = change.apply(laid);
        if (changed.equals(laid)) return picture();
        laid = changed;
        laid.keep(path, faults);
        revision.incrementAndGet();
        solve();
        listeners.tell("laid", NotebookJson.laid(revision.get(), laid));
        return picture();
    }

    /** Brings the carrier to the one that is wanted, in pencil; empty when no adjustment can. */
    synchronized Optional<String> trim() {
        return folder.build()
                .intent()
                .carrier()
                .flatMap(wanted -> live.trim(wanted.value(), Progress.SILENT))
                .flatMap(there -> lay(now -> now.turned(there.part(), there.position())));
    }

    /**
     * Writes one value into the build file.
     *
     * @param seen what the page saw there; empty when there was nothing
     * @param text what shall stand there; empty to take it out
     * @throws BadInputException when it can't stand there
     * @throws Conflict when something else has come to stand there meanwhile; nothing is written then
     */
    synchronized void write(String place, Optional<String> seen, Optional<String> text)
            throws BadInputException, IOException, Conflict {
        look();
        if (seen.equals(text)) return;
        Optional<String> now = NotebookJson.text(folder.build(), place);
        if (now.equals(text)) return;
        if (troubles.isEmpty() && !now.equals(seen)) throw new Conflict(place, seen, now, text);
        try {
            make(new Edit(place, seen, text), History.WRITTEN);
        } catch (BadInputException refused) {
            if (Disk.of(path).equals(disk)) throw refused;
            write(place, seen, text); // another program was quicker by a moment: its change is looked at first
        }
    }

    /** Undoes the last edit, or does the last undone one again; false when there is none. */
    synchronized boolean step(boolean back) throws BadInputException, IOException {
        look();
        Optional<Edit> edit = back ? history.undoing() : history.redoing();
        if (edit.isEmpty()) return false;
        make(edit.get(), back ? History.UNDONE : History.REDONE);
        return true;
    }

    /**
     * Puts a build that lies in a folder of its own beside this one in its place, as one edit.
     *
     * @throws BadInputException when there is none, or it does not fit the bench log or what else lies here
     */
    synchronized void take(String beside) throws BadInputException, IOException {
        look();
        make(Whole.to(folder, Whole.beside(path, beside), "as in " + beside), History.WRITTEN);
    }

    /** Takes the accepted calibration away; it is kept beside its place. */
    synchronized void drop() throws BadInputException, IOException {
        look();
        if (!troubles.isEmpty()) throw new BadInputException(troubles);
        folder.dropCalibration();
        folder = BuildFolder.open(path);
        disk = Disk.of(path);
        changed();
    }

    private void make(Edit edit, String how) throws BadInputException, IOException {
        if (!troubles.isEmpty()) throw new BadInputException(troubles);
        History.Line line = new History.Line(edit, now(), how);
        history.note(line);
        try {
            folder = Whole.is(edit) ? Whole.make(folder, edit) : folder.edit(edit);
        } catch (BadInputException | IOException | RuntimeException refused) {
            history.refuse(line);
            throw refused;
        }
        disk = Disk.of(path);
        if (edit.path().matches("parts\\.[^.]+\\.set"))
            laid = laid.released(edit.path().split("\\.")[1]);
        if (Whole.is(edit)) laid = new Laid(Map.of(), laid.temperature(), laid.supply());
        laid.keep(path, faults);
        changed();
    }

    /** Adds readings to the bench log. */
    synchronized void note(List<LogEntry> readings) throws BadInputException, IOException {
        look();
        folder = folder.note(readings);
        disk = Disk.of(path);
        revision.incrementAndGet();
        listeners.tell("state", state());
    }

    /** The present moment, as files write it. */
    String now() {
        return LocalDateTime.now(clock)
                .truncatedTo(ChronoUnit.MINUTES)
                .toString()
                .replace('T', ' ');
    }

    /**
     * Starts long work on the build as it stands, with what is laid over it.
     *
     * @param asked what the page adds to the question, by name
     */
    synchronized Jobs.Job start(LongWork work, Map<String, String> asked) {
        BuildFolder of = folder;
        Laid with = laid;
        return jobs.start(
                work.word(), of.build().file().digest(), progress -> work.run(of, with.over(of), asked, progress));
    }

    private void lookQuietly() {
        try {
            look();
        } catch (IOException | RuntimeException fault) {
            faults.accept(fault);
        }
    }

    /** Takes over what another program has written meanwhile; what it has broken is told and waits. */
    private synchronized void look() throws IOException {
        Disk now = Disk.of(path);
        if (now.equals(disk)) return;
        disk = now;
        try {
            BuildFolder opened = BuildFolder.open(path);
            List<String> others = Outside.between(folder.build(), opened.build());
            folder = opened;
            troubles = List.of();
            changed();
            listeners.tell("outside", NotebookJson.outside(others));
        } catch (BadInputException broken) {
            troubles = broken.problems();
            revision.incrementAndGet();
            listeners.tell("state", state());
        }
    }

    private void changed() {
        revision.incrementAndGet();
        solve();
        listeners.tell("state", state());
    }

    /** Solves the carrier anew; where that can't be, the last true picture stays and says so. */
    private void solve() {
        solved.incrementAndGet();
        curve.ifPresent(f -> f.cancel(true));
        completing.ifPresent(f -> f.cancel(true));
        whole = Optional.empty();
        long began = System.nanoTime();
        try {
            moment = Optional.of(live.at(folder, laid.over(folder), Progress.SILENT));
            stale = Optional.empty();
            follow(moment.get());
        } catch (BadInputException | NoOperatingPoint none) {
            stale = Optional.of(String.valueOf(none.getMessage()));
        } catch (IOException fault) {
            faults.accept(fault);
            stale = Optional.of("a file could not be read: " + fault.getMessage());
        }
        milliseconds = (System.nanoTime() - began) / 1e6;
        picture().ifPresent(p -> listeners.tell("picture", p));
    }

    private void follow(Moment from) {
        long asked = solved.get();
        curve = Optional.of(later.submit(() -> curve(from, asked)));
        BuildFolder of = folder;
        Laid with = laid;
        completing = Optional.of(
                later.schedule(() -> complete(of, with, asked), WHOLE_AFTER_MILLISECONDS, TimeUnit.MILLISECONDS));
    }

    private void curve(Moment from, long asked) {
        if (from.curveWasAsked()) return;
        try {
            Moment complete = from.withCurve(whileNewest(asked));
            synchronized (this) {
                if (solved.get() != asked) return;
                moment = Optional.of(complete);
                picture().ifPresent(p -> listeners.tell("picture", p));
            }
        } catch (CancellationException newer) {
            return; // what follows a newer change is on its way
        } catch (RuntimeException fault) {
            faults.accept(fault);
        }
    }

    private void complete(BuildFolder of, Laid with, long asked) {
        try {
            Prediction prediction = Predict.of(of, with.over(of), Accuracy.CERTIFIED, whileNewest(asked));
            synchronized (this) {
                if (solved.get() != asked) return;
                whole = Optional.of(prediction);
                picture().ifPresent(p -> listeners.tell("picture", p));
                listeners.tell("state", state());
            }
        } catch (CancellationException newer) {
            return; // what follows a newer change is on its way
        } catch (BadInputException | NoOperatingPoint | IOException | RuntimeException fault) {
            faults.accept(fault instanceof RuntimeException known ? known : new IllegalStateException(fault));
        }
    }

    private Progress whileNewest(long asked) {
        return new Progress() {
            @Override
            public void at(double share, String doing) {
                // the page shows a pending mark
            }

            @Override
            public boolean cancelled() {
                return Thread.currentThread().isInterrupted() || solved.get() != asked;
            }
        };
    }

    @Override
    public synchronized void close() {
        looking.ifPresent(f -> f.cancel(false));
        later.shutdownNow();
        jobs.close();
        drawn.close();
        listeners.close();
    }
}
