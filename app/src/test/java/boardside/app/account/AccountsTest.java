package boardside.app.account;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boardside.app.practice.Account;
import boardside.app.practice.Failure;
import boardside.app.practice.Ids;
import boardside.app.practice.Login;
import boardside.app.practice.Player;
import boardside.app.practice.Role;
import boardside.app.practice.Ticket;
import boardside.app.record.Stores;
import boardside.app.store.Database;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedClass;
import org.junit.jupiter.params.provider.EnumSource;

/** Accounts on both kinds of store; two instances over one store where it matters. */
@ParameterizedClass
@EnumSource
class AccountsTest {
    private static final String PASSWORD = "correct horse battery";
    private static final String HOME = "192.0.2.1";

    private final Stores kind;

    @TempDir
    private Path folder;

    private final Passwords passwords = new Passwords(64, 1);
    private final List<String> left = new ArrayList<>();
    private final List<Database> open = new ArrayList<>();
    private Instant now = Instant.parse("2026-06-01T12:00:00Z");
    private String location = "";
    private Database database;
    private Accounts accounts;
    private SignIns signIns;

    AccountsTest(Stores kind) {
        this.kind = kind;
    }

    @BeforeEach
    void open() {
        location = kind.location(folder);
        database = instance();
        accounts = accounts(database);
        signIns = signIns(database);
    }

    /** One more program over the same store. */
    private Database instance() {
        Database instance = Database.open(location);
        open.add(instance);
        return instance;
    }

    private InstantSource clock() {
        return () -> now;
    }

    private Accounts accounts(Database over) {
        Departure noted = (rows, player) -> left.add(player.name() + " of "
                + rows.players()
                        .of(rows.players().account(player.id()).orElseThrow())
                        .size());
        return new Accounts(over, clock(), new Ids(clock(), new Random(1)), passwords, List.of(noted));
    }

    private SignIns signIns(Database over) {
        return new SignIns(over, clock(), new Ids(clock(), new Random(2)), passwords);
    }

    @AfterEach
    void close() {
        open.forEach(Database::close);
    }

    private List<Player> players(Account account) {
        return database.read(rows -> rows.players().of(account.id()));
    }

    private Account account(String name, Role role) {
        Accounts.Taken taken = accounts.take(accounts.invite(role, "").token(), name, name + " B", PASSWORD);
        assertThat(taken).isInstanceOf(Accounts.Taken.Done.class);
        return ((Accounts.Taken.Done) taken).account();
    }

    private String in(String name) {
        SignIns.Result result = signIns.signIn(name, PASSWORD, HOME, "Test");
        assertThat(result).isInstanceOf(SignIns.Result.Done.class);
        return ((SignIns.Result.Done) result).token();
    }

    @Test
    void anInvitationWorksOnceGivesItsRoleAndEnds() {
        Accounts.Made made = accounts.invite(Role.ORGANISER, " for\nBen ");
        assertThat(accounts.invitations()).extracting(Ticket::note).containsExactly("for Ben");
        String hashes = database.read(rows -> rows.tickets().invitations(now).toString());
        assertThat(hashes).doesNotContain(made.token());
        assertThat(accounts.take(made.token(), "x", "Ben", PASSWORD)).isEqualTo(new Accounts.Taken.BadName());
        assertThat(accounts.take(made.token(), "<b>ben</b>", "Ben", PASSWORD)).isEqualTo(new Accounts.Taken.BadName());
        assertThat(accounts.take(made.token(), "ben", " ", PASSWORD)).isEqualTo(new Accounts.Taken.BadPlayerName());
        assertThat(accounts.take(made.token(), "ben", "Ben", "short"))
                .isEqualTo(new Accounts.Taken.BadPassword(Passwords.Fault.SHORT));
        Accounts.Taken done = accounts.take(made.token(), "Ben", "Ben B", PASSWORD);
        Account ben = ((Accounts.Taken.Done) done).account();
        assertThat(ben.role()).isEqualTo(Role.ORGANISER);
        assertThat(players(ben)).extracting(Player::name).containsExactly("Ben B");
        assertThat(accounts.take(made.token(), "eve", "Eve", PASSWORD)).isEqualTo(new Accounts.Taken.Gone());

        Accounts.Made late = accounts.invite(Role.PLAYER, "");
        assertThat(accounts.take(late.token(), "BEN", "Ben", PASSWORD)).isEqualTo(new Accounts.Taken.NameTaken());
        assertThat(accounts.take(late.token().replace('a', 'b').replace('0', '1'), "eve", "Eve", PASSWORD))
                .isEqualTo(new Accounts.Taken.Gone());
        now = late.ticket().until();
        assertThat(accounts.take(late.token(), "eve", "Eve", PASSWORD)).isEqualTo(new Accounts.Taken.Gone());

        Accounts.Made back = accounts.invite(Role.PLAYER, "");
        accounts.withdraw(back.ticket().id());
        assertThat(accounts.take(back.token(), "eve", "Eve", PASSWORD)).isEqualTo(new Accounts.Taken.Gone());
        assertThat(accounts.all()).hasSize(1);
    }

    @Test
    void ofManyWhoTakeOneInvitationAtOnceOneGetsIn() throws Exception {
        Accounts elsewhere = accounts(instance());
        String token = accounts.invite(Role.PLAYER, "").token();
        ExecutorService many = Executors.newFixedThreadPool(6);
        try {
            List<Callable<Accounts.Taken>> tries = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                String name = "taker" + i;
                Accounts at = i % 2 == 0 ? accounts : elsewhere;
                tries.add(() -> at.take(token, name, "T", PASSWORD));
            }
            int done = 0;
            for (Future<Accounts.Taken> taken : many.invokeAll(tries)) {
                done += taken.get() instanceof Accounts.Taken.Done ? 1 : 0;
            }
            assertThat(done).isEqualTo(1);
        } finally {
            many.shutdownNow();
        }
        assertThat(accounts.all()).hasSize(1);
    }

    @Test
    void twoAccountsMayHavePlayersOfOneNameAndNumbersAreNeverGivenTwice() {
        Account anna = account("anna", Role.PLAYER);
        Account ben = account("ben", Role.PLAYER);
        database.write(rows -> rows.players()
                .add(
                        rows.accounts().find(ben.id()).orElseThrow(),
                        "anna B",
                        Player.Hand.LEFT,
                        Player.Hand.LEFT,
                        now.toString()));
        assertThat(players(anna)).extracting(Player::name).containsExactly("anna B");
        assertThat(players(ben)).extracting(Player::name).containsExactly("ben B", "anna B");
        assertThat((List<String>)
                        database.read(rows -> List.copyOf(rows.players().names().values())))
                .containsExactly("anna B (anna)", "ben B (ben)", "anna B (ben)");
        int last = players(ben).get(1).id();
        assertThat((List<Player>) database.read(rows -> rows.players().household(last)))
                .extracting(Player::name)
                .containsExactly("ben B", "anna B");
        accounts.delete(ben.id());
        assertThat(left).containsExactly("ben B of 2", "anna B of 1");
        Account eve = account("eve", Role.PLAYER);
        assertThat(players(eve).get(0).id()).isGreaterThan(last);
    }

    @Test
    void signingInGivesANewTokenOfWhichTheStoreHasTheHashAlone() {
        Account anna = account("Anna", Role.PLAYER);
        String one = in(" aNNa ");
        String other = in("anna");
        assertThat(one).hasSize(64).isNotEqualTo(other);
        assertThat(signIns.find(one).orElseThrow().account()).isEqualTo(anna);
        assertThat(signIns.find(one.replace('a', 'b').replace('0', '1'))).isEmpty();
        assertThat((boolean) database.read(rows ->
                        rows.logins().find(one, Instant.EPOCH, Instant.EPOCH).isEmpty()))
                .as("the token is not what is looked up")
                .isTrue();
        assertThat(signIns(instance()).find(one)).as("in another program").isPresent();
        signIns.signOut(anna, signIns.find(one).orElseThrow().login().id());
        assertThat(signIns.find(one)).isEmpty();
        assertThat(signIns.find(other)).isPresent();
    }

    @Test
    void nobodyIsTheRightNameOrTheRightPasswordMore() {
        Account anna = account("anna", Role.PLAYER);
        account("host", Role.HOST);
        SignIns.Result refused = new SignIns.Result.Refused();
        assertThat(signIns.signIn("anna", "wrong wrong wrong", HOME, "")).isEqualTo(refused);
        assertThat(signIns.signIn("nobody", PASSWORD, HOME, "")).isEqualTo(refused);
        accounts.close(anna.id());
        assertThat(signIns.signIn("anna", PASSWORD, HOME, "")).isEqualTo(refused);
        accounts.open(anna.id());
        assertThat(signIns.signIn("anna", PASSWORD, HOME, "")).isInstanceOf(SignIns.Result.Done.class);
    }

    @Test
    void guessingIsSlowedForNamesThatExistAndOthersAlikeInAllPrograms() {
        account("anna", Role.PLAYER);
        SignIns elsewhere = signIns(instance());
        for (String name : List.of("anna", "nobody")) {
            for (int guess = 0; guess < Throttle.MOST_BY_NAME; guess++) {
                SignIns at = guess % 2 == 0 ? signIns : elsewhere;
                assertThat(at.signIn(name, "wrong wrong wrong", "198.51.100." + guess, ""))
                        .isEqualTo(new SignIns.Result.Refused());
            }
            assertThat(signIns.signIn(name, PASSWORD, "203.0.113.7", ""))
                    .as("the right password too")
                    .isEqualTo(new SignIns.Result.Slowed());
            assertThat(elsewhere.signIn(name, PASSWORD, "203.0.113.7", "")).isEqualTo(new SignIns.Result.Slowed());
        }
        now = now.plus(Throttle.WINDOW);
        in("anna");
    }

    @Test
    void oneAddressCannotTryManyNamesAndAnIpv6NetworkIsOne() {
        account("anna", Role.PLAYER);
        for (int guess = 0; guess < Throttle.MOST_BY_ADDRESS; guess++) {
            signIns.signIn(
                    "name" + guess, "wrong wrong wrong", "[2001:db8:1:2:0:0:0:" + Integer.toHexString(guess) + "]", "");
        }
        assertThat(signIns.signIn("anna", PASSWORD, "2001:db8:1:2::9", "")).isEqualTo(new SignIns.Result.Slowed());
        assertThat(signIns.signIn("anna", PASSWORD, "2001:db8:1:3::9", "")).isInstanceOf(SignIns.Result.Done.class);
    }

    @Test
    void manyGuessesAtOnceAreNoWayAround() throws Exception {
        account("anna", Role.PLAYER);
        SignIns elsewhere = signIns(instance());
        ExecutorService many = Executors.newFixedThreadPool(8);
        try {
            List<Callable<SignIns.Result>> guesses = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                SignIns at = i % 2 == 0 ? signIns : elsewhere;
                guesses.add(() -> at.signIn("anna", "wrong wrong wrong", HOME, ""));
            }
            int looked = 0;
            for (Future<SignIns.Result> result : many.invokeAll(guesses)) {
                looked += result.get() instanceof SignIns.Result.Refused ? 1 : 0;
            }
            assertThat(looked).isEqualTo(Throttle.MOST_BY_NAME);
        } finally {
            many.shutdownNow();
        }
    }

    @Test
    void aRightPasswordDoesNotCountAsATry() {
        account("anna", Role.PLAYER);
        for (int i = 0; i < Throttle.MOST_BY_ADDRESS + 5; i++) {
            in("anna");
        }
    }

    @Test
    void aLoginEndsWithoutVisitsAndInAnyCase() {
        Account anna = account("anna", Role.PLAYER);
        String idle = in("anna");
        now = now.plus(SignIns.IDLE);
        assertThat(signIns.find(idle)).isEmpty();
        String used = in("anna");
        Instant made = now;
        while (now.isBefore(made.plus(SignIns.LONGEST).minus(Duration.ofDays(20)))) {
            now = now.plus(Duration.ofDays(20));
            assertThat(signIns.find(used)).isPresent();
        }
        assertThat(signIns.of(anna)).extracting(Login::seenAt).containsExactly(now);
        now = made.plus(SignIns.LONGEST);
        assertThat(signIns.find(used)).isEmpty();
        assertThat(signIns.of(anna)).isEmpty();
    }

    @Test
    void aNewPasswordEndsOtherLoginsAndAResetLinkWorksOnce() {
        Account anna = account("anna", Role.PLAYER);
        String here = in("anna");
        String there = in("anna");
        SignIns.Signed signed = signIns.find(here).orElseThrow();
        assertThat(signIns.confirm(anna, "wrong wrong wrong", HOME)).isEqualTo(SignIns.Confirmed.WRONG);
        assertThat(signIns.confirm(anna, PASSWORD, HOME)).isEqualTo(SignIns.Confirmed.YES);
        Accounts.Made before = accounts.reset(anna.id());
        signIns.changePassword(signed, "another fine phrase");
        assertThat(signIns.find(here)).isPresent();
        assertThat(signIns.find(there)).isEmpty();
        assertThat(signIns.signIn("anna", PASSWORD, HOME, "")).isEqualTo(new SignIns.Result.Refused());
        assertThat(accounts.setPassword(before.token(), PASSWORD))
                .as("made before")
                .isEqualTo(new Accounts.Taken.Gone());

        Accounts.Made first = accounts.reset(anna.id());
        Accounts.Made reset = accounts.reset(anna.id());
        assertThat(accounts.setPassword(first.token(), PASSWORD))
                .as("a later one")
                .isEqualTo(new Accounts.Taken.Gone());
        assertThat(accounts.take(reset.token(), "eve", "Eve", PASSWORD))
                .as("no invitation")
                .isEqualTo(new Accounts.Taken.Gone());
        assertThat(accounts.setPassword(reset.token(), PASSWORD)).isInstanceOf(Accounts.Taken.Done.class);
        assertThat(signIns.find(here)).isEmpty();
        assertThat(accounts.setPassword(reset.token(), "one more phrase")).isEqualTo(new Accounts.Taken.Gone());
        in("anna");
    }

    @Test
    void aHashWithLessWorkIsMadeAnewAtTheNextSignIn() {
        account("anna", Role.PLAYER);
        Passwords raised = new Passwords(128, 2);
        SignIns later = new SignIns(database, clock(), new Ids(clock(), new Random(3)), raised);
        assertThat(later.signIn("anna", PASSWORD, HOME, "")).isInstanceOf(SignIns.Result.Done.class);
        String hash = database.read(rows -> rows.accounts().named("anna"))
                .orElseThrow()
                .password();
        assertThat(hash).startsWith("$argon2id$v=19$m=128,t=2,p=4$");
        assertThat(later.signIn("anna", PASSWORD, HOME, "")).isInstanceOf(SignIns.Result.Done.class);
    }

    @Test
    void thereIsAlwaysAHostAndAClosedAccountIsOutAtOnce() {
        Account host = account("host", Role.HOST);
        Account anna = account("anna", Role.PLAYER);
        String token = in("anna");
        assertThatThrownBy(() -> accounts.role(host.id(), Role.PLAYER)).hasMessageContaining("no host would be left");
        assertThatThrownBy(() -> accounts.close(host.id())).hasMessageContaining("no host would be left");
        assertThat(accounts.all()).extracting(Account::role).containsExactly(Role.PLAYER, Role.HOST);
        accounts.close(anna.id());
        assertThat(signIns.find(token)).isEmpty();
        assertThat(signIns(instance()).find(token)).isEmpty();
        assertThatThrownBy(() -> accounts.reset(anna.id())).isInstanceOf(Failure.BadInput.class);
        accounts.open(anna.id());
        assertThat(signIns.find(token)).as("the old login stays ended").isEmpty();
        accounts.role(anna.id(), Role.HOST);
        accounts.close(host.id());
        assertThat(accounts.hasHost()).isTrue();
        assertThatThrownBy(() -> accounts.role("nobody", Role.HOST)).isInstanceOf(Failure.NotFound.class);
    }
}
