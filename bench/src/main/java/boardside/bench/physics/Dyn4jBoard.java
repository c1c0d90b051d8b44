package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Scene;
import org.dyn4j.dynamics.Body;
import org.dyn4j.dynamics.BodyFixture;
import org.dyn4j.geometry.Geometry;
import org.dyn4j.geometry.MassType;
import org.dyn4j.world.World;

/** A board on dyn4j: discs that do not spin, restitution from any speed on, resting discs asleep. */
final class Dyn4jBoard extends SteppedBoard {
    private static final double KILOGRAMS_PER_OUNCE = 0.028349523125;

    private final World<Body> world = new World<>();
    private final Body[] bodies;

    Dyn4jBoard(Scene scene, Bag thrown, double step) {
        super(scene, thrown, step);
        world.setGravity(0, 0);
        world.getSettings().setStepFrequency(step);
        bodies = new Body[scene.bags().size() + 1];
        for (int i = 0; i < bodies.length; i++) {
            double ounces =
                    i == 0 ? thrown.ounces() : scene.bags().get(i - 1).bag().ounces();
            bodies[i] = new Body();
            BodyFixture fixture = bodies[i].addFixture(
                    Geometry.createCircle(RADIUS),
                    ounces * KILOGRAMS_PER_OUNCE / (Math.PI * RADIUS * RADIUS),
                    scene.contact().friction(),
                    scene.contact().restitution());
            fixture.setRestitutionVelocity(scene.contact().parting());
            bodies[i].setMass(MassType.FIXED_ANGULAR_VELOCITY);
            bodies[i].setLinearDamping(0);
            world.addBody(bodies[i]);
        }
    }

    @Override
    void put(int i, double x, double y, double vx, double vy) {
        bodies[i].getTransform().setTranslation(x, y);
        bodies[i].setEnabled(true);
        bodies[i].setAtRest(i > 0);
        bodies[i].setLinearVelocity(vx, vy);
    }

    @Override
    void remove(int i) {
        bodies[i].setLinearVelocity(0, 0);
        bodies[i].setEnabled(false);
    }

    @Override
    void velocity(int i, double vx, double vy) {
        bodies[i].setLinearVelocity(vx, vy);
    }

    @Override
    double x(int i) {
        return bodies[i].getTransform().getTranslationX();
    }

    @Override
    double y(int i) {
        return bodies[i].getTransform().getTranslationY();
    }

    @Override
    double vx(int i) {
        return bodies[i].getLinearVelocity().x;
    }

    @Override
    double vy(int i) {
        return bodies[i].getLinearVelocity().y;
    }

    @Override
    void advance() {
        world.step(1);
    }
}
