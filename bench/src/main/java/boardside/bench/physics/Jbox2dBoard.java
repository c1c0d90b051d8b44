package boardside.bench.physics;

import boardside.engine.physics.Bag;
import boardside.engine.physics.Scene;
import org.jbox2d.collision.shapes.CircleShape;
import org.jbox2d.common.Vec2;
import org.jbox2d.dynamics.Body;
import org.jbox2d.dynamics.BodyDef;
import org.jbox2d.dynamics.BodyType;
import org.jbox2d.dynamics.FixtureDef;
import org.jbox2d.dynamics.World;

/**
 * A board on JBox2D (single precision): discs that do not spin, resting discs asleep. It takes blows slower
 * than 1 m/s as dead, which cannot be set.
 */
final class Jbox2dBoard extends SteppedBoard {
    private static final double KILOGRAMS_PER_OUNCE = 0.028349523125;
    private static final int VELOCITY_ITERATIONS = 8;
    private static final int POSITION_ITERATIONS = 3;

    private final World world = new World(new Vec2(0, 0));
    private final Body[] bodies;
    private final float step;
    private final Vec2 place = new Vec2();

    Jbox2dBoard(Scene scene, Bag thrown, double step) {
        super(scene, thrown, step);
        this.step = (float) step;
        bodies = new Body[scene.bags().size() + 1];
        for (int i = 0; i < bodies.length; i++) {
            double ounces =
                    i == 0 ? thrown.ounces() : scene.bags().get(i - 1).bag().ounces();
            BodyDef body = new BodyDef();
            body.type = BodyType.DYNAMIC;
            body.fixedRotation = true;
            bodies[i] = world.createBody(body);
            FixtureDef fixture = new FixtureDef();
            CircleShape disc = new CircleShape();
            disc.m_radius = (float) RADIUS;
            fixture.shape = disc;
            fixture.density = (float) (ounces * KILOGRAMS_PER_OUNCE / (Math.PI * RADIUS * RADIUS));
            fixture.friction = (float) scene.contact().friction();
            fixture.restitution = (float) scene.contact().restitution();
            bodies[i].createFixture(fixture);
        }
    }

    @Override
    void put(int i, double x, double y, double vx, double vy) {
        bodies[i].setActive(true);
        place.set((float) x, (float) y);
        bodies[i].setTransform(place, 0);
        velocity(i, vx, vy);
        bodies[i].setAwake(i == 0);
    }

    @Override
    void remove(int i) {
        bodies[i].setActive(false);
    }

    @Override
    void velocity(int i, double vx, double vy) {
        bodies[i].getLinearVelocity().set((float) vx, (float) vy);
    }

    @Override
    double x(int i) {
        return bodies[i].getPosition().x;
    }

    @Override
    double y(int i) {
        return bodies[i].getPosition().y;
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
        world.step(step, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
    }
}
