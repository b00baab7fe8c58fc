#include "render/pdf_printer.hpp"

#include "measure/refusal.hpp"
#include "records/files.hpp"
#include "records/private_folder.hpp"

#include <chrono>
#include <csignal>
#include <fcntl.h>
#include <filesystem>
#include <spawn.h>
#include <sstream>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

namespace beadbook {
namespace {

constexpr std::size_t most_pdf_bytes = std::size_t{256} << 20;

std::string in_path(const std::string &program, const std::string &path) {
    std::istringstream folders(path);
    for (std::string folder; std::getline(folders, folder, ':');) {
        const std::string file = folder + "/" + program;
        if (!folder.empty() && access(file.c_str(), X_OK) == 0) return file;
    }
    return "";
}

std::vector<std::string> words_of_chromium(const std::string &program, const PrivateFolder &folder) {
    std::vector<std::string> out{program,
                                 "--headless",
                                 "--disable-gpu",
                                 "--no-first-run",
                                 "--disable-background-networking",
                                 "--disable-component-update",
                                 "--disable-sync",
                                 "--host-resolver-rules=MAP * ~NOTFOUND",
                                 "--no-pdf-header-footer",
                                 "--user-data-dir=" + folder.file("profile"),
                                 "--print-to-pdf=" + folder.file("page.pdf"),
                                 "file://" + folder.file("page.html")};
    // As root chromium refuses to start with its own walls round the page; the page is ours and has no
    // script.
    if (geteuid() == 0) out.insert(out.begin() + 1, "--no-sandbox");
    return out;
}

/// Those that are there, in the order in which they are tried. Throws DataError: none is.
std::vector<std::vector<std::string>> converters(const PrivateFolder &folder, const std::string &path) {
    std::vector<std::vector<std::string>> out;
    if (const std::string program = in_path("weasyprint", path); !program.empty())
        out.push_back({program, folder.file("page.html"), folder.file("page.pdf")});
    for (const char *name : {"chromium", "chromium-browser"})
        if (const std::string program = in_path(name, path); !program.empty()) {
            out.push_back(words_of_chromium(program, folder));
            break; // the other name is of the same program
        }
    if (out.empty())
        throw DataError("no program that makes a PDF is there: install weasyprint or chromium (on Debian: "
                        "apt-get install weasyprint), or write the page as HTML and print it from a browser");
    return out;
}

/// Its exit status; -1 if it did not end in time.
int run_quietly(const std::vector<std::string> &words, const std::string &said,
                std::chrono::milliseconds at_most) {
    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_addopen(&files, STDERR_FILENO, said.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_addclosefrom_np(&files, STDERR_FILENO + 1);
    // In a group of its own, so that what it starts ends with it.
    posix_spawnattr_t how;
    posix_spawnattr_init(&how);
    posix_spawnattr_setflags(&how, POSIX_SPAWN_SETPGROUP);
    std::vector<std::string> own = words;
    std::vector<char *> pointers;
    for (auto &word : own) pointers.push_back(word.data());
    pointers.push_back(nullptr);
    pid_t id = 0;
    const int error = posix_spawn(&id, pointers[0], &files, &how, pointers.data(), environ);
    posix_spawn_file_actions_destroy(&files);
    posix_spawnattr_destroy(&how);
    if (error != 0) throw DataError(words[0] + " could not be started");
    const auto deadline = std::chrono::steady_clock::now() + at_most;
    int status = 0;
    while (waitpid(id, &status, WNOHANG) == 0) {
        if (std::chrono::steady_clock::now() > deadline) {
            kill(-id, SIGKILL);
            waitpid(id, &status, 0);
            return -1;
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}

std::string last_line(const std::string &file) {
    std::string text = std::filesystem::exists(file) ? read_bytes(file, most_pdf_bytes) : "";
    while (!text.empty() && text.back() == '\n') text.pop_back();
    return text.substr(text.find_last_of('\n') == std::string::npos ? 0 : text.find_last_of('\n') + 1);
}

/// What it made. Throws DataError: it made none in time, failed, or made something else.
std::string made_by(const std::vector<std::string> &words, const PrivateFolder &folder,
                    std::chrono::milliseconds at_most) {
    const std::string pdf = folder.file("page.pdf"),
                      name = std::filesystem::path(words[0]).filename().string();
    std::filesystem::remove(pdf); // what one before it left half done
    const int status = run_quietly(words, folder.file("said"), at_most);
    if (status == -1)
        throw DataError(name + " made no PDF in " +
                        std::to_string(std::chrono::duration_cast<std::chrono::seconds>(at_most).count()) +
                        " s");
    if (status != 0 || !std::filesystem::exists(pdf)) {
        const std::string said = last_line(folder.file("said"));
        throw DataError(name + " made no PDF" + (said.empty() ? "" : "; it said: " + said));
    }
    std::string out = read_bytes(pdf, most_pdf_bytes);
    if (!out.starts_with("%PDF-")) throw DataError(name + " made something else than a PDF");
    return out;
}

} // namespace

std::string pdf_of(const std::string &page, const std::string &path, std::chrono::milliseconds at_most) {
    const PrivateFolder folder("the page");
    const auto all = converters(folder, path);
    write_new_file(folder.file("page.html"), page);
    std::string failed;
    for (const auto &words : all) try {
            return made_by(words, folder, at_most);
        } catch (const DataError &e) {
            failed += (failed.empty() ? "" : "; ") + std::string(e.what());
        }
    throw DataError(failed);
}

} // namespace beadbook
