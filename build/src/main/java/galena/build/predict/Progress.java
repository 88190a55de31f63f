package galena.build.predict;

import galena.engine.steady.Watch;

/** Hears how far a long computation has come, and may stop it. */
public interface Progress {
    /** Hears nothing, stops nothing. */
    Progress SILENT = new Progress() {
        @Override
        public void at(double share, String doing) {
            // nobody listens
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    };

    /**
     * @param share of the work done, 0 to 1
     * @param doing what comes next, in a few words
     */
    void at(double share, String doing);

    /** True when the computation is to stop; it then ends with a {@link java.util.concurrent.CancellationException}. */
    boolean cancelled();

    /** The progress of one part of a longer computation, which goes from one share of the whole to another. */
    default Progress part(double from, double to) {
        Progress whole = this;
        return new Progress() {
            @Override
            public void at(double share, String doing) {
                whole.at(from + share * (to - from), doing);
            }

            @Override
            public boolean cancelled() {
                return whole.cancelled();
            }
        };
    }

    /** The same as the engine wants it. */
    default Watch watch() {
        return new Watch(this::cancelled);
    }
}
