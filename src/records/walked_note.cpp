#include "records/walked_note.hpp"

#include "measure/refusal.hpp"
#include "records/files.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>
#include <sys/stat.h>
#include <unistd.h>

namespace beadbook::walked_note {
namespace {

std::string note_of(const std::string &path) { return path + "-walked"; }

/// The file itself and its last change: of its inode, which no program can set back.
std::string moment_of(const std::string &path) {
    struct stat s {};
    if (stat(path.c_str(), &s) != 0) return {};
    std::ostringstream out;
    out << s.st_dev << ' ' << s.st_ino << ' ' << s.st_size << ' ' << s.st_mtim.tv_sec << ' '
        << s.st_mtim.tv_nsec << ' ' << s.st_ctim.tv_sec << ' ' << s.st_ctim.tv_nsec;
    return out.str();
}

} // namespace

Noted read(const std::string &path) {
    std::ifstream in(note_of(path));
    std::string moment, word;
    if (!std::getline(in, moment) || moment != moment_of(path)) return {};
    Noted out;
    Walked walked;
    if (!(in >> walked.seq >> walked.hash)) return {};
    if (walked.seq >= 1) out.walked = std::move(walked);
    Counted counted;
    if (in >> word >> counted.entries >> counted.hash >> counted.coupons && word == "counted" &&
        counted.entries >= 1)
        out.counted = std::move(counted);
    return out;
}

void write(const std::string &path, const Noted &noted) {
    const std::string moment = moment_of(path);
    if (moment.empty() || !noted.any()) return;
    // Programs that know of no counting read the first two lines; the number 0 tells them nothing.
    const Walked walked = noted.walked.value_or(Walked{0, "-"});
    std::string text = moment + "\n" + std::to_string(walked.seq) + " " + walked.hash + "\n";
    if (const auto &counted = noted.counted)
        text += "counted " + std::to_string(counted->entries) + " " + counted->hash + " " +
                std::to_string(counted->coupons) + "\n";
    // Put in place whole: somebody may be reading the one before.
    const std::string written = note_of(path) + "." + std::to_string(getpid());
    std::error_code none;
    try {
        write_new_file(written, text);
        std::filesystem::rename(written, note_of(path), none);
    } catch (const Refusal &) {
        std::filesystem::remove(written, none);
    }
}

} // namespace beadbook::walked_note
