#include "web/tablet_door.hpp"

#include "measure/refusal.hpp"
#include "records/files.hpp"
#include "web/authority.hpp"

#include <fcntl.h>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sys/stat.h>
#include <unistd.h>

namespace beadbook {
namespace {

namespace fs = std::filesystem;

/// A name, not an address: browsers do not say which address they ask for, and nginx could not tell.
void must_be_host(const std::string &host) {
    const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); };
    bool good = !host.empty() && host.size() <= 200 && letter(host.front()) && letter(host.back()) &&
                host.find("..") == std::string::npos;
    bool named = false;
    for (const char c : host) {
        good = good && (letter(c) || c == '-' || c == '.');
        named = named || (c >= 'a' && c <= 'z');
    }
    if (!good || !named)
        throw refused("'" + shown(host) +
                      "' is no name of a host; expected small letters, digits, dots and dashes: "
                      "bench.shop.internal")
            .at("host");
}

/// Written beside and put in place, so that nginx and the bench read all of it or the old one.
void put_private(const std::string &path, const std::string &bytes) {
    const std::string beside = path + ".new";
    ::unlink(beside.c_str());
    const int file = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    std::size_t at = 0;
    while (file >= 0 && at < bytes.size()) {
        const auto n = ::write(file, bytes.data() + at, bytes.size() - at);
        if (n <= 0) break;
        at += static_cast<std::size_t>(n);
    }
    bool whole = file >= 0 && at == bytes.size() && ::fsync(file) == 0;
    if (file >= 0) whole = ::close(file) == 0 && whole;
    if (!whole || ::rename(beside.c_str(), path.c_str()) != 0) throw StoreError(path + ": cannot be written");
}

std::string replaced(std::string text, const std::vector<std::pair<std::string, std::string>> &words) {
    for (const auto &[from, to] : words)
        for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
            text.replace(at, from.size(), to);
    return text;
}

constexpr const char *configuration = R"(# Written by beadbook, and written anew by it.
pid "@folder@/nginx.pid";
error_log "@folder@/error.log";
worker_processes 2;
events {}
http {
    access_log off;
    server_tokens off;
    # Bodies stay in memory: the folder is closed to the workers. Photos are up to 8 MB.
    client_max_body_size 8m;
    client_body_buffer_size 8m;
    client_body_temp_path "@folder@/temporary/body";
    proxy_temp_path "@folder@/temporary/proxy";
    fastcgi_temp_path "@folder@/temporary/fastcgi";
    uwsgi_temp_path "@folder@/temporary/uwsgi";
    scgi_temp_path "@folder@/temporary/scgi";
    proxy_max_temp_file_size 0;
    client_header_timeout 10s;
    client_body_timeout 20s;
    send_timeout 20s;
    keepalive_timeout 30s;
    large_client_header_buffers 4 8k;
    limit_conn_zone $binary_remote_addr zone=tablets:1m;
    limit_req_zone $binary_remote_addr zone=sign_in:1m rate=60r/m;

    ssl_protocols TLSv1.2 TLSv1.3;
    ssl_session_tickets off;
    ssl_session_cache shared:tls:2m;

    # Whoever asks for another name gets no answer.
    server {
        listen @port@ ssl default_server;
        ssl_reject_handshake on;
        # Also to who names ours in the handshake, and another one after it.
        return 421;
    }
    server {
        listen @port@ ssl;
        server_name @host@;
        ssl_certificate "@folder@/server.crt";
        ssl_certificate_key "@folder@/server.key";
        add_header Strict-Transport-Security "max-age=31536000" always;
        limit_conn tablets 40;
        location / { proxy_pass http://127.0.0.1:@bench@; include "@folder@/proxy.conf"; }
        location = /sign-in {
            limit_req zone=sign_in burst=30 nodelay;
            limit_req_status 429;
            proxy_pass http://127.0.0.1:@bench@;
            include "@folder@/proxy.conf";
        }
    }
}
)";

constexpr const char *proxy_settings = R"(proxy_http_version 1.1;
proxy_set_header Connection "";
proxy_set_header Host "@address@";
proxy_set_header X-Forwarded-For $remote_addr;
proxy_set_header X-Bench-Proxy "@word@";
proxy_connect_timeout 5s;
proxy_send_timeout 20s;
proxy_read_timeout 30s;
)";

} // namespace

WayIn write_door(const std::string &folder, const TabletDoor &asked) {
    must_be_host(asked.host);
    std::error_code failed;
    fs::create_directories(folder, failed);
    const std::string at = fs::canonical(folder, failed).string();
    if (failed || ::chmod(at.c_str(), 0700) != 0) throw StoreError(folder + ": no such folder can be used");
    if (at.find_first_of("\"$;{}\\\n") != std::string::npos)
        throw refused("the folder's name holds a sign that nginx would read otherwise");
    fs::create_directories(at + "/temporary", failed);
    TabletDoor door = asked;
    door.proxy = secret_word();
    const std::string paper = at + "/authority.crt", key = at + "/authority.key";
    const bool is_new = !fs::exists(paper) && !fs::exists(key);
    if (is_new) {
        const Certified made = new_authority();
        put_private(key, made.key);
        put_private(paper, made.certificate);
    }
    const Certified server = certified_by({read_file(paper), read_file(key)}, door.host);
    put_private(at + "/server.key", server.key);
    put_private(at + "/server.crt", server.certificate);
    const std::vector<std::pair<std::string, std::string>> words{{"@folder@", at},
                                                                 {"@host@", door.host},
                                                                 {"@address@", door.address()},
                                                                 {"@port@", std::to_string(door.port)},
                                                                 {"@bench@", std::to_string(door.bench_port)},
                                                                 {"@word@", door.proxy}};
    put_private(at + "/proxy.conf", replaced(proxy_settings, words));
    put_private(at + "/nginx.conf", replaced(configuration, words));
    put_private(at + "/door.json", nlohmann::json{{"host", door.host},
                                                  {"port", door.port},
                                                  {"bench port", door.bench_port},
                                                  {"proxy", door.proxy}}
                                           .dump() +
                                       "\n");
    return {at, at + "/nginx.conf", paper, door.origin(), is_new};
}

TabletDoor read_door(const std::string &folder) {
    const std::string path = folder + "/door.json";
    struct stat about {};
    if (::stat(path.c_str(), &about) != 0)
        throw refused(path + " is not there; the files for nginx are to be written first");
    if ((about.st_mode & 077) != 0) throw refused(path + ": others may read it; 'chmod 600' closes it");
    try {
        const auto json = nlohmann::json::parse(read_file(path));
        TabletDoor out{json.at("host"), json.at("port"), json.at("bench port"), json.at("proxy")};
        if (out.proxy.size() < 32) throw refused(path + " cannot be read");
        return out;
    } catch (const nlohmann::json::exception &) {
        throw refused(path + " cannot be read; the files for nginx are to be written anew");
    }
}

} // namespace beadbook
