#include "language/packed_yaml.hpp"

#include <charconv>
#include <stdexcept>

namespace beadbook {
namespace {

// A node is its kind (s: scalar, q: quoted, l: list, m: map), line, column and size, each number closed by a
// blank, and then its text or its parts; an entry of a map has its key before it.

void pack(std::string &out, std::size_t number) { out += std::to_string(number) + ' '; }

void pack(std::string &out, Where where) {
    pack(out, static_cast<std::size_t>(where.line));
    pack(out, static_cast<std::size_t>(where.column));
}

void pack(std::string &out, const std::string &text) {
    pack(out, text.size());
    out += text;
}

void pack(std::string &out, const Yaml &node) {
    out += node.kind == Yaml::Kind::list ? 'l' : node.kind == Yaml::Kind::map ? 'm' : node.quoted ? 'q' : 's';
    pack(out, node.where);
    if (node.kind == Yaml::Kind::scalar) return pack(out, node.text);
    pack(out, node.kind == Yaml::Kind::list ? node.items.size() : node.entries.size());
    for (const auto &item : node.items) pack(out, item);
    for (const auto &entry : node.entries) {
        pack(out, entry.key_where);
        pack(out, entry.key);
        pack(out, entry.value);
    }
}

class Unpacking {
public:
    explicit Unpacking(std::string_view text) : left_(text) {}

    Yaml node() {
        Yaml out;
        const char kind = some(1).front();
        out.where = where();
        switch (kind) {
        case 'l':
            out.kind = Yaml::Kind::list;
            out.items.resize(number());
            for (auto &item : out.items) item = node();
            return out;
        case 'm':
            out.kind = Yaml::Kind::map;
            out.entries.resize(number());
            for (auto &entry : out.entries) {
                entry.key_where = where();
                entry.key = some(number());
                entry.value = node();
            }
            return out;
        case 'q': out.quoted = true; break;
        case 's': break;
        default: throw std::logic_error("a packed tree is damaged");
        }
        out.text = some(number());
        return out;
    }

private:
    std::string_view some(std::size_t size) {
        if (size > left_.size()) throw std::logic_error("a packed tree is cut off");
        const std::string_view out = left_.substr(0, size);
        left_.remove_prefix(size);
        return out;
    }
    std::size_t number() {
        std::size_t out = 0;
        const auto [end, error] = std::from_chars(left_.data(), left_.data() + left_.size(), out);
        if (error != std::errc()) throw std::logic_error("a packed tree is damaged");
        some(static_cast<std::size_t>(end - left_.data()) + 1);
        return out;
    }
    Where where() {
        const auto line = static_cast<int>(number());
        return {line, static_cast<int>(number())};
    }

    std::string_view left_;
};

} // namespace

std::string packed(const Yaml &tree) {
    std::string out;
    pack(out, tree);
    return out;
}

Yaml unpacked(std::string_view text) { return Unpacking(text).node(); }

} // namespace beadbook
