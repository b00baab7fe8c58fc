// Put in front of libc with LD_PRELOAD: counts the calls that change or read files, and lets one of them
// fail. Built by the tests alone. BEADBOOK_FAULT_AT: which call, from 1. BEADBOOK_FAULT_HOW: an errno by its
// number, "short" (half of what was to be read or written), or "kill". BEADBOOK_FAULT_COUNT: a file that gets
// the number of all calls.
#include <atomic>
#include <cerrno>
#include <csignal>
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

namespace {

std::atomic<long> calls{0};

long wanted() {
    static const long at = [] {
        const char *set = std::getenv("BEADBOOK_FAULT_AT");
        return set ? std::strtol(set, nullptr, 10) : 0L;
    }();
    return at;
}

enum class Fault { none, error, half };

Fault fault_now() {
    if (++calls != wanted()) return Fault::none;
    const char *how = std::getenv("BEADBOOK_FAULT_HOW");
    if (!how) return Fault::none;
    if (std::strcmp(how, "short") == 0) return Fault::half;
    if (std::strcmp(how, "kill") == 0) raise(SIGKILL);
    errno = static_cast<int>(std::strtol(how, nullptr, 10));
    return Fault::error;
}

template <class F>
F next(F, const char *name) {
    return reinterpret_cast<F>(dlsym(RTLD_NEXT, name));
}

/// A call that has no half.
template <class F, class... Args>
int whole(F self, const char *name, Args... args) {
    if (fault_now() == Fault::error) return -1;
    return next(self, name)(args...);
}

/// A call that may do a part of what was asked.
template <class F, class Buffer, class... Args>
ssize_t part(F self, const char *name, int file, Buffer buffer, std::size_t size, Args... args) {
    const Fault fault = fault_now();
    if (fault == Fault::error) return -1;
    return next(self, name)(file, buffer, fault == Fault::half ? (size + 1) / 2 : size, args...);
}

struct Told {
    ~Told() {
        const char *path = std::getenv("BEADBOOK_FAULT_COUNT");
        if (!path) return;
        char number[32];
        const int size = std::snprintf(number, sizeof number, "%ld", calls.load());
        const long file = syscall(SYS_openat, AT_FDCWD, path, O_WRONLY | O_CREAT | O_TRUNC, 0600);
        if (file < 0) return;
        syscall(SYS_write, file, number, static_cast<std::size_t>(size));
        syscall(SYS_close, file);
    }
} told;

int opened(const char *name, const char *path, int flags, mode_t mode) {
    if (fault_now() == Fault::error) return -1;
    using Open = int (*)(const char *, int, ...);
    return next(static_cast<Open>(nullptr), name)(path, flags, mode);
}

mode_t mode_of(int flags, va_list list) { return (flags & O_CREAT) != 0 ? va_arg(list, mode_t) : 0; }

} // namespace

extern "C" {

int open(const char *path, int flags, ...) {
    va_list list;
    va_start(list, flags);
    const mode_t mode = mode_of(flags, list);
    va_end(list);
    return opened("open", path, flags, mode);
}
int open64(const char *path, int flags, ...) {
    va_list list;
    va_start(list, flags);
    const mode_t mode = mode_of(flags, list);
    va_end(list);
    return opened("open64", path, flags, mode);
}
ssize_t read(int file, void *to, size_t size) { return part(read, "read", file, to, size); }
ssize_t write(int file, const void *from, size_t size) { return part(write, "write", file, from, size); }
ssize_t pread(int file, void *to, size_t size, off_t at) { return part(pread, "pread", file, to, size, at); }
ssize_t pread64(int file, void *to, size_t size, off64_t at) {
    return part(pread64, "pread64", file, to, size, at);
}
ssize_t pwrite(int file, const void *from, size_t size, off_t at) {
    return part(pwrite, "pwrite", file, from, size, at);
}
ssize_t pwrite64(int file, const void *from, size_t size, off64_t at) {
    return part(pwrite64, "pwrite64", file, from, size, at);
}
int fsync(int file) { return whole(fsync, "fsync", file); }
int fdatasync(int file) { return whole(fdatasync, "fdatasync", file); }
int ftruncate(int file, off_t size) noexcept { return whole(ftruncate, "ftruncate", file, size); }
int ftruncate64(int file, off64_t size) noexcept { return whole(ftruncate64, "ftruncate64", file, size); }
int unlink(const char *path) noexcept { return whole(unlink, "unlink", path); }
int link(const char *from, const char *to) noexcept { return whole(link, "link", from, to); }
int rename(const char *from, const char *to) noexcept { return whole(rename, "rename", from, to); }
int mkdir(const char *path, mode_t mode) noexcept { return whole(mkdir, "mkdir", path, mode); }

} // extern "C"
