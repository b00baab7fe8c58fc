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

std::optional<Walked> read(const std::string &path) {
    std::ifstream in(note_of(path));
    std::string moment;
    Walked out;
    if (!std::getline(in, moment) || moment != moment_of(path) || !(in >> out.seq >> out.hash) || out.seq < 1)
        return std::nullopt;
    return out;
}

void write(const std::string &path, const Walked &walked) {
    const std::string moment = moment_of(path);
    if (moment.empty() || walked.seq < 1) return;
    // Put in place whole: somebody may be reading the one before.
    const std::string written = note_of(path) + "." + std::to_string(getpid());
    std::error_code none;
    try {
        write_new_file(written, moment + "\n" + std::to_string(walked.seq) + " " + walked.hash + "\n");
        std::filesystem::rename(written, note_of(path), none);
    } catch (const Refusal &) {
        std::filesystem::remove(written, none);
    }
}

} // namespace beadbook::walked_note
