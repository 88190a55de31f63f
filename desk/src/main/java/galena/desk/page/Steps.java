package galena.desk.page;

import galena.build.folder.BuildFolder;
import galena.build.folder.Intent;
import galena.build.folder.Layout;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Judgement;
import galena.build.predict.Prediction.Outcome;
import galena.desk.page.Jobs.Job;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * How far a build has come in the loop, and the next sensible thing to do. Steps whose work isn't there are left out.
 *
 * @param all in the order of the loop
 * @param next a sentence
 * @param nextStep the step that it belongs to
 */
record Steps(List<Step> all, String next, String nextStep) {
    private static final String AT_WORK = "at work";

    /** How a step stands. */
    enum Mark {
        /** Nothing was done yet. */
        OPEN,
        /** Done, and it holds for the build as it is. */
        DONE,
        /** Done, of the build as it was. */
        OLDER,
        /** Something doesn't meet the intent. */
        MISSES
    }

    /**
     * @param name of the step
     * @param question what the builder asks
     * @param mark how it stands
     * @param words the same in words
     * @param work the long work that belongs to it; empty for none
     */
    record Step(String name, String question, Mark mark, String words, List<String> work) {}

    Steps {
        all = List.copyOf(all);
    }

    static Steps of(BuildFolder folder, List<Job> jobs, Optional<Prediction> prediction) {
        List<Step> all = new ArrayList<>();
        String digest = folder.build().file().digest();
        all.add(intend(folder.build().intent()));
        all.add(propose(prediction, jobs, digest));
        all.add(predict(prediction));
        all.add(work("guard", "what spoils it", List.of("guard", "spread"), jobs, digest));
        all.add(work("align", "what do I set first", List.of("align"), jobs, digest));
        all.add(work("listen", "how will it sound", List.of("listen"), jobs, digest));
        all.add(measure(folder, jobs, digest));
        if (!folder.log().isEmpty() || folder.calibration().isPresent()) all.add(reconcile(folder, jobs, digest));
        all.add(publish(folder, jobs, digest));
        Optional<Step> next = all.stream().filter(s -> s.mark() != Mark.DONE).findFirst();
        return new Steps(
                all,
                next.map(Steps::advice).orElse("Nothing is open: build it, and listen."),
                next.map(Step::name).orElse(""));
    }

    private static Step intend(Intent intent) {
        long wanted = Stream.of(
                        intent.carrier(), intent.distance(), intent.modulation(), intent.runtime(), intent.harmonics())
                .filter(Optional::isPresent)
                .count();
        return new Step(
                "intend",
                "what is wanted",
                intent.carrier().isPresent() ? Mark.DONE : Mark.OPEN,
                wanted == 0 ? "nothing is written yet" : wanted + (wanted == 1 ? " wish" : " wishes") + " written",
                List.of());
    }

    /** A build that meets its intent needs no other parts. */
    private static Step propose(Optional<Prediction> prediction, List<Job> jobs, String digest) {
        Step asked = work("propose", "which parts", List.of("propose"), jobs, digest);
        if (asked.mark() == Mark.DONE || asked.words().equals(AT_WORK)) return asked;
        boolean met = prediction.isPresent() && predict(prediction).mark() == Mark.DONE;
        return met ? new Step(asked.name(), asked.question(), Mark.DONE, "the intent is met", asked.work()) : asked;
    }

    private static Step predict(Optional<Prediction> prediction) {
        if (prediction.isEmpty()) return new Step("predict", "what will it do", Mark.OPEN, "not solved", List.of());
        List<Judgement> judged = prediction.get().judgements();
        long met = judged.stream().filter(j -> j.outcome() == Outcome.MEETS).count();
        boolean misses = judged.stream().anyMatch(j -> j.outcome() == Outcome.FAILS || j.outcome() == Outcome.MAY_FAIL);
        return new Step(
                "predict",
                "what will it do",
                misses ? Mark.MISSES : Mark.DONE,
                judged.isEmpty() ? "solved" : met + " of " + judged.size() + " met",
                List.of());
    }

    private static Step work(String name, String question, List<String> work, List<Job> jobs, String digest) {
        Mark mark = Mark.OPEN;
        String words = "not asked yet";
        for (Job job : jobs) {
            if (!work.contains(job.kind())) continue;
            if (job.isOpen()) return new Step(name, question, Mark.OPEN, AT_WORK, work);
            if (job.slip().isEmpty()) continue;
            boolean holds = job.digest().equals(digest);
            if (mark == Mark.OPEN || holds) mark = holds ? Mark.DONE : Mark.OLDER;
            words = mark == Mark.DONE ? "answered" : "of the build as it was";
        }
        return new Step(name, question, mark, words, work);
    }

    private static Step measure(BuildFolder folder, List<Job> jobs, String digest) {
        int count = folder.log().size();
        Step compared = work("measure", "what did I build", List.of("compare"), jobs, digest);
        if (count == 0) return new Step("measure", "what did I build", Mark.OPEN, "no readings yet", List.of());
        String words = count + (count == 1 ? " reading" : " readings");
        return new Step("measure", "what did I build", compared.mark(), words, List.of("compare"));
    }

    private static Step reconcile(BuildFolder folder, List<Job> jobs, String digest) {
        Step asked = work("reconcile", "why does it differ", List.of("reconcile", "accept"), jobs, digest);
        return folder.calibration().isPresent()
                        && asked.mark() == Mark.OPEN
                        && !asked.words().equals(AT_WORK)
                ? new Step(asked.name(), asked.question(), Mark.DONE, "a calibration is accepted", asked.work())
                : asked;
    }

    private static Step publish(BuildFolder folder, List<Job> jobs, String digest) {
        Step written = work("publish", "how do others repeat it", List.of("packet"), jobs, digest);
        if (written.mark() != Mark.OPEN || written.words().equals(AT_WORK)) return written;
        boolean there = Files.exists(Layout.PACKET.in(folder.folder()).resolve("packet.html"));
        return there
                ? new Step(written.name(), written.question(), Mark.OLDER, "a packet is there", written.work())
                : written;
    }

    private static String advice(Step step) {
        if (step.words().equals(AT_WORK))
            return "The answer under " + step.name() + " is being worked out; look around meanwhile.";
        return switch (step.name()) {
            case "intend" -> "Write the carrier that you want.";
            case "propose" -> "Ask for parts that meet the intent, or change values by hand.";
            case "predict" ->
                step.mark() == Mark.MISSES
                        ? "Take the proposal in, or look at what is not met and change a value."
                        : "The build is not solved: see what the page says about it.";
            case "guard" -> "Ask what moves the carrier before you lay out the board.";
            case "align" -> "Ask what each adjustment reaches.";
            case "listen" -> "Hear what a set makes of it.";
            case "measure" ->
                step.mark() == Mark.OPEN && step.work().isEmpty()
                        ? "Build it; then drop a capture here or note a reading."
                        : "Hold the readings against the prediction.";
            case "reconcile" -> "Ask what explains the readings.";
            default -> "Write the packet, so that a friend can build it too.";
        };
    }
}
