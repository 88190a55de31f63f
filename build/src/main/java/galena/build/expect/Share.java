package galena.build.expect;

import galena.build.predict.Progress;

/** The progress of one part of a longer computation. */
record Share(Progress whole, double from, double to) implements Progress {
    @Override
    public void at(double share, String doing) {
        whole.at(from + share * (to - from), doing);
    }

    @Override
    public boolean cancelled() {
        return whole.cancelled();
    }
}
