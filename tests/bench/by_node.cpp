#include "by_node.hpp"

#include "temporary.hpp"

#include <cstdlib>
#include <sstream>
#include <stdexcept>

namespace beadbook::bench {

std::vector<std::pair<std::string, JobDone>> judge_by_node(const std::string &folder,
                                                           const std::vector<PoresOfCoupon> &coupons) {
    const test::TemporaryFolder files;
    std::ostringstream in;
    for (const auto &pores : coupons)
        for (std::size_t i = 0; i < pores.size(); ++i)
            in << pores[i].at << ' ' << pores[i].size << (i + 1 < pores.size() ? ' ' : '\n');
    test::write_file(files.file("pores"), in.str());
    const std::string call =
        "node '" + folder + "/peers.mjs' <'" + files.file("pores") + "' >'" + files.file("out") + "'";
    if (std::system(call.c_str()) != 0) throw std::runtime_error("failed: " + call);
    std::istringstream told(test::read_file(files.file("out")));
    std::vector<std::pair<std::string, JobDone>> out;
    for (std::string line; std::getline(told, line);) {
        std::istringstream words(line);
        std::string name;
        JobDone done;
        std::getline(words, name, '\t');
        words >> done.rejected >> done.ns_each;
        out.emplace_back(name, done);
    }
    return out;
}

} // namespace beadbook::bench
