#pragma once

#include "temporary.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <vector>

/// The program as a process of its own, which can be killed, or whose system calls can be made to fail.
namespace beadbook::test {

struct Child {
    std::vector<std::string> words;
    std::string book;
    std::map<std::string, std::string> environment = {};
    std::string out = "";   ///< where its output goes; empty: into Ended::out
    int kill_after_us = -1; ///< SIGKILL after so long
};
struct Ended {
    int code = -1; ///< -1: ended by a signal
    int signal = 0;
    std::string out, err;
};
Ended run(const Child &child);

/// Did the program say that what it was asked to enter is on record?
bool says_stored(const Ended &ended);

/// How often a fault is tried: BEADBOOK_FAULTS, else so often that all fault tests together take less than a
/// minute. "all" is as often as there are places to fail.
std::size_t faults_wanted(std::size_t otherwise);

/// At most `wanted` numbers below `end`, spread evenly, the first and the last among them.
std::vector<std::size_t> spread(std::size_t end, std::size_t wanted);

/// A record with a coupon of every state that commands change: T-1 with an open RT exam and two finds, T-2
/// that can be judged. Also criteria, a practice and a stored verdict. Entries are numbered from 1 to
/// `entries`.
class Template {
public:
    Template();
    void copy_to(const std::string &path) const { write_file(path, bytes); }
    std::string bytes;
    std::int64_t entries = 0;
    std::string head;
};

/// How the record stands: the number of entries that hold; fails the test if it does not verify. Opens it for
/// reading only, so that what a crash left must be mended by that.
std::int64_t sound_entries(const std::string &path);

} // namespace beadbook::test
