// beadbook-cover: reads a set cover on standard input, writes the best cover on standard output. A program of
// its own, because CBC may print, overrun its time or abort, and because it would make every start of
// beadbook slower. Ends with 0 if it answered, 2 if it could not read the question, 3 if CBC failed.
#include "solver/cover_text.hpp"

#include <Cbc_C_Interface.h>
#include <algorithm>
#include <cmath>
#include <csignal>
#include <cstdlib>
#include <fcntl.h>
#include <iostream>
#include <sstream>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

namespace {

using namespace beadbook;

/// A bound in floating point counts as the next whole number only where it is clearly above the one before.
int safely_up(double bound, int most) {
    if (!std::isfinite(bound) || bound <= 0) return 0;
    return bound >= most ? most : static_cast<int>(std::ceil(bound - 0.01));
}

CoverReply solve(const CoverQuestion &question) {
    const int rows = static_cast<int>(question.elements.size());
    std::vector<std::vector<int>> contents(static_cast<std::size_t>(question.sets));
    for (int e = 0; e < rows; ++e)
        for (const int s : question.elements[static_cast<std::size_t>(e)])
            contents[static_cast<std::size_t>(s)].push_back(e);
    std::vector<CoinBigIndex> start{0};
    std::vector<int> index;
    for (const auto &set : contents) {
        index.insert(index.end(), set.begin(), set.end());
        start.push_back(static_cast<CoinBigIndex>(index.size()));
    }
    const std::vector<double> ones(std::max(index.size(), contents.size()), 1.0), zeros(contents.size(), 0.0),
        row_from(question.elements.size(), 1.0),
        row_to(question.elements.size(), static_cast<double>(question.sets));

    Cbc_Model *model = Cbc_newModel();
    Cbc_setLogLevel(model, 0);
    Cbc_loadProblem(model, question.sets, rows, start.data(), index.data(), ones.data(), zeros.data(),
                    ones.data(), ones.data(), row_from.data(), row_to.data());
    for (int s = 0; s < question.sets; ++s) Cbc_setInteger(model, s);
    Cbc_setParameter(model, "timeMode", "elapsed");
    Cbc_setParameter(model, "ratioGap", "0");
    Cbc_setParameter(model, "allowableGap", "0");
    Cbc_setMaximumSeconds(model, question.seconds);
    Cbc_solve(model);

    CoverReply out;
    if (const double *x = Cbc_bestSolution(model))
        for (int s = 0; s < question.sets; ++s)
            if (x[s] > 0.5) out.chosen.push_back(s);
    const int size = static_cast<int>(out.chosen.size());
    out.proven = size > 0 && Cbc_status(model) == 0 && Cbc_isProvenOptimal(model) != 0;
    out.at_least = out.proven ? size : safely_up(Cbc_getBestPossibleObjValue(model), size);
    return out; // the model goes with the process
}

/// Standard output aside, and nothing in its place: CBC prints lines of its own.
int set_output_aside() {
    const int out = fcntl(STDOUT_FILENO, F_DUPFD_CLOEXEC, 3);
    const int nothing = open("/dev/null", O_WRONLY | O_CLOEXEC);
    if (out < 0 || nothing < 0 || dup2(nothing, STDOUT_FILENO) < 0) return -1;
    return out;
}

bool write_all(int to, const std::string &text) {
    for (std::size_t done = 0; done < text.size();) {
        const ssize_t n = write(to, text.data() + done, text.size() - done);
        if (n < 0) return false;
        done += static_cast<std::size_t>(n);
    }
    return true;
}

} // namespace

int main() {
    prctl(PR_SET_PDEATHSIG, SIGKILL); // nobody waits for the answer any more
    const rlimit no_core{0, 0};
    setrlimit(RLIMIT_CORE, &no_core);
    const int out = set_output_aside();
    if (out < 0) return 3;
    const auto question = read_question(std::cin);
    if (!question) {
        std::cerr << "beadbook-cover: standard input is no set cover; beadbook writes it\n";
        return 2;
    }
    std::ostringstream reply;
    try {
        write_reply(solve(*question), reply);
    } catch (const std::exception &e) {
        std::cerr << "beadbook-cover: " << e.what() << "\n";
        return 3;
    }
    // At once: what CBC leaves behind is not tidied up, so that it cannot fail after the answer.
    std::_Exit(write_all(out, reply.str()) ? 0 : 3);
}
