#include "operations/outside_solver.hpp"

#include "operations/program_beside.hpp"
#include "solver/limits.hpp"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <fcntl.h>
#include <optional>
#include <poll.h>
#include <spawn.h>
#include <string_view>
#include <sys/mman.h>
#include <sys/wait.h>
#include <system_error>
#include <thread>
#include <unistd.h>

namespace beadbook {
namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

/// Why there is no answer: the end of the sentence "The solver ...".
struct Failure {
    std::string why;
};

class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() { close(); }
    Descriptor(const Descriptor &) = delete;
    Descriptor &operator=(const Descriptor &) = delete;
    int get() const { return number_; }
    void close() {
        if (number_ >= 0) ::close(number_);
        number_ = -1;
    }
    /// Away from 0, 1 and 2, which the child gets: a caller may have closed its own.
    void lift() {
        if (number_ < 0 || number_ > STDERR_FILENO) return;
        const int higher = fcntl(number_, F_DUPFD_CLOEXEC, STDERR_FILENO + 1);
        close();
        number_ = higher;
    }

private:
    int number_;
};

/// A child that is ended, if need be, and waited for whatever happens here.
class Child {
public:
    explicit Child(pid_t id) : id_(id) {}
    ~Child() { end(); }
    Child(const Child &) = delete;
    Child &operator=(const Child &) = delete;

    /// Whether it ended by itself until then, and how.
    std::optional<int> wait_until(Clock::time_point deadline) {
        while (id_ > 0) {
            int status = 0;
            const pid_t got = waitpid(id_, &status, WNOHANG);
            if (got == id_) {
                id_ = 0;
                return status;
            }
            if (got < 0 && errno != EINTR) { // the caller has its children reaped by the system
                id_ = 0;
                return 0;
            }
            if (Clock::now() >= deadline) break;
            std::this_thread::sleep_for(milliseconds(1));
        }
        return std::nullopt;
    }

private:
    void end() {
        if (id_ <= 0) return;
        kill(id_, SIGKILL);
        while (waitpid(id_, nullptr, 0) < 0 && errno == EINTR) {
        }
    }

    pid_t id_;
};

struct SpawnActions {
    posix_spawn_file_actions_t files;
    posix_spawnattr_t how;
    SpawnActions() {
        posix_spawn_file_actions_init(&files);
        posix_spawnattr_init(&how);
    }
    ~SpawnActions() {
        posix_spawn_file_actions_destroy(&files);
        posix_spawnattr_destroy(&how);
    }
    SpawnActions(const SpawnActions &) = delete;
    SpawnActions &operator=(const SpawnActions &) = delete;
};

pid_t start(const std::string &program, int input, int output) {
    SpawnActions actions;
    posix_spawn_file_actions_adddup2(&actions.files, input, STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&actions.files, output, STDOUT_FILENO);
    posix_spawn_file_actions_addopen(&actions.files, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addclosefrom_np(&actions.files, STDERR_FILENO + 1);
    // Signals as usual: beadbook ignores SIGPIPE, and a thread of a server may block some.
    sigset_t none, usual;
    sigemptyset(&none);
    sigemptyset(&usual);
    sigaddset(&usual, SIGPIPE);
    posix_spawnattr_setsigmask(&actions.how, &none);
    posix_spawnattr_setsigdefault(&actions.how, &usual);
    posix_spawnattr_setflags(&actions.how, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
    std::string name = program;
    char *const words[] = {name.data(), nullptr};
    pid_t id = 0;
    const int error = posix_spawn(&id, program.c_str(), &actions.files, &actions.how, words, environ);
    if (error != 0) throw Failure{"could not be started: " + std::generic_category().message(error)};
    return id;
}

void fill(int file, const std::string &text) {
    for (std::size_t done = 0; done < text.size();) {
        const ssize_t n = write(file, text.data() + done, text.size() - done);
        if (n < 0 && errno == EINTR) continue;
        if (n <= 0) throw Failure{"could not be given its question"};
        done += static_cast<std::size_t>(n);
    }
    lseek(file, 0, SEEK_SET);
}

/// All that comes until the other end is closed.
std::string read_until(int from, std::size_t most, Clock::time_point deadline) {
    std::string out;
    while (true) {
        const auto left =
            std::min<long>(std::chrono::ceil<milliseconds>(deadline - Clock::now()).count(), 1'000'000);
        pollfd waiting{from, POLLIN, 0};
        const int ready = left <= 0 ? 0 : poll(&waiting, 1, static_cast<int>(left));
        if (ready < 0 && errno == EINTR) continue;
        if (ready < 0) throw Failure{"could not be listened to"};
        if (ready == 0) throw Failure{"did not end in its time"};
        char part[4096];
        const ssize_t n = read(from, part, sizeof part);
        if (n < 0 && (errno == EINTR || errno == EAGAIN)) continue;
        if (n < 0) throw Failure{"could not be listened to"};
        if (n == 0) return out;
        out.append(part, static_cast<std::size_t>(n));
        if (out.size() > most) throw Failure{"said more than an answer can be"};
    }
}

std::string ask(const std::string &program, const std::string &question, std::size_t most,
                Clock::time_point deadline) {
    // A file in memory. With a pipe the two programs would have to take turns, and one that reads nothing
    // would end this one by SIGPIPE.
    Descriptor input(memfd_create("beadbook-cover", MFD_CLOEXEC));
    fill(input.get(), question);
    input.lift();
    int ends[2];
    if (pipe2(ends, O_CLOEXEC) != 0) throw Failure{"could not be given a pipe"};
    Descriptor from(ends[0]), to(ends[1]);
    to.lift();
    Child child(start(program, input.get(), to.get()));
    to.close();
    std::string out = read_until(from.get(), most, deadline);
    const auto status = child.wait_until(deadline);
    if (!status) throw Failure{"did not end in its time"};
    if (WIFSIGNALED(*status)) throw Failure{"broke off (signal " + std::to_string(WTERMSIG(*status)) + ")"};
    if (*status != 0) throw Failure{"failed (exit code " + std::to_string(WEXITSTATUS(*status)) + ")"};
    return out;
}

/// Time for the solver to come up and to end; CBC overruns by some hundredths of a second.
milliseconds working_time(milliseconds patience) {
    return std::clamp(patience - patience / 10 - milliseconds(50), milliseconds(1),
                      milliseconds(solver_limits::milliseconds));
}

/// As src/solver/cover_text.hpp describes it.
std::string question_text(const CoverProblem &problem, milliseconds patience) {
    std::size_t entries = 0;
    for (const auto &holders : problem.holders) entries += holders.count();
    if (problem.sets > solver_limits::sets || problem.holders.size() > solver_limits::elements ||
        entries > solver_limits::entries)
        throw Failure{"was not asked: the plan is too large for it"};
    std::string out = "cover 1\nmilliseconds " + std::to_string(working_time(patience).count()) + "\nsets " +
                      std::to_string(problem.sets) + "\nelements " + std::to_string(problem.holders.size()) +
                      "\n";
    for (const auto &holders : problem.holders) {
        const auto first = holders.find_first();
        for (auto s = first; s != Bits::npos; s = holders.find_next(s)) {
            if (s != first) out += ' ';
            out += std::to_string(s);
        }
        out += '\n';
    }
    return out + "end\n";
}

/// Takes the answer apart from its start. Anything unexpected is a failure.
class Answer {
public:
    explicit Answer(std::string_view text) : rest_(text) {}

    bool take(std::string_view word) {
        if (!rest_.starts_with(word)) return false;
        rest_.remove_prefix(word.size());
        return true;
    }
    void expect(std::string_view word) {
        if (!take(word)) fail();
    }
    std::size_t number(std::size_t most) {
        std::size_t out = 0;
        const auto [end, error] = std::from_chars(rest_.data(), rest_.data() + rest_.size(), out);
        if (error != std::errc() || out > most) fail();
        rest_.remove_prefix(static_cast<std::size_t>(end - rest_.data()));
        return out;
    }
    void nothing_more() const {
        if (!rest_.empty()) fail();
    }
    [[noreturn]] static void fail() { throw Failure{"gave no answer that can be read"}; }

private:
    std::string_view rest_;
};

CoverAnswer read_answer(const std::string &text, const CoverProblem &problem) {
    Answer answer(text);
    CoverAnswer out;
    answer.expect("cover 1\n");
    const bool proven = answer.take("proven\n");
    if (!proven) answer.expect("best\n");
    answer.expect("at least ");
    out.at_least = answer.number(problem.sets);
    answer.expect("\nchosen ");
    const std::size_t size = answer.number(problem.sets);
    for (std::size_t i = 0; i < size; ++i) {
        answer.expect(i == 0 ? "\n" : " ");
        out.chosen.push_back(answer.number(problem.sets - 1));
    }
    answer.expect(size == 0 ? "\n\nend\n" : "\nend\n");
    answer.nothing_more();
    if (out.at_least > size || (proven && out.at_least != size)) Answer::fail();
    if (size == 0) throw Failure{"found no plan in its time"};
    return out;
}

std::string find_program() {
    std::string out = program_beside("beadbook-cover");
    if (out.empty()) throw Failure{"is missing: there is no program beadbook-cover beside beadbook"};
    return out;
}

CoverAnswer answer_to(const std::string &given, const CoverProblem &problem, milliseconds patience) {
    const Clock::time_point deadline = Clock::now() + patience;
    if (problem.sets == 0 || problem.holders.empty()) return {};
    const std::string program = given.empty() ? find_program() : given;
    const std::string question = question_text(problem, patience);
    const std::size_t most = 100 + 8 * problem.sets; // an index of at most six digits and a space
    return read_answer(ask(program, question, most, deadline), problem);
}

} // namespace

CoverSolver outside_solver(const std::string &program) {
    return [program](const CoverProblem &problem, milliseconds patience) -> CoverAnswer {
        const std::string rest = "; this is the best plan found without it.";
        try {
            return answer_to(program, problem, patience);
        } catch (const Failure &failure) {
            return {{}, 0, "The solver " + failure.why + rest};
        } catch (const std::exception &e) {
            return {{}, 0, "The solver could not be asked: " + std::string(e.what()) + rest};
        }
    };
}

} // namespace beadbook
