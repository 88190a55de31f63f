package galena.engine.steady;

/**
 * What is imposed beside the phase where a parameter p is free: w (φ + δφ) + v (p + δp) keeps a value, of a figure φ of the orbit.
 *
 * @param figure φ
 * @param weight w
 * @param byParameter v; zero where the figure alone is imposed
 * @param lacks what the sum still lacks where the orbit stands
 */
record Condition(OrbitFigure figure, double weight, double byParameter, double lacks) {
    /** The figure alone, to grow by so much. */
    static Condition figure(OrbitFigure figure, double lacks) {
        return new Condition(figure, 1, 0, lacks);
    }
}
