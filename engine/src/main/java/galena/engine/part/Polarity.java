package galena.engine.part;

/** Which carriers a transistor works with. */
public enum Polarity {
    /** npn, or n-channel. */
    N(1),
    /** pnp, or p-channel: every voltage and current of the N device reversed. */
    P(-1);

    private final int sign;

    Polarity(int sign) {
        this.sign = sign;
    }

    /** +1 for N, −1 for P. */
    public int sign() {
        return sign;
    }
}
