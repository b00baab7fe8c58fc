#include "records/codecs/located.hpp"

#include "measure/refusal.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

namespace beadbook::codec {
namespace {

constexpr std::size_t deepest = 24; // an exchange file has 8

/// Gives the parser one byte after the other and counts how far it has read.
class Counting {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char *;
    using reference = const char &;

    Counting(const char *at, std::size_t *read) : at_(at), read_(read) {}
    reference operator*() const { return *at_; }
    Counting &operator++() {
        ++at_;
        ++*read_;
        return *this;
    }
    Counting operator++(int) {
        Counting old = *this;
        ++*this;
        return old;
    }
    bool operator==(const Counting &other) const { return at_ == other.at_; }
    bool operator!=(const Counting &other) const { return at_ != other.at_; }

private:
    const char *at_;
    std::size_t *read_;
};

/// Builds the tree from the parser's events.
class Builder : public nlohmann::json_sax<nlohmann::json> {
public:
    Builder(const std::string &text, const std::size_t &read, std::size_t most_values)
        : text_(text), read_(read), most_values_(most_values) {
        end_ = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    }
    Located root;

    bool null() override { return put(Located::Kind::null), true; }
    bool boolean(bool value) override {
        put(Located::Kind::truth).yes = value;
        return true;
    }
    bool number_integer(number_integer_t value) override { return whole(value, true); }
    bool number_unsigned(number_unsigned_t value) override {
        return whole(static_cast<std::int64_t>(value), value <= INT64_MAX);
    }
    bool number_float(number_float_t, const string_t &) override { return whole(0, false); }
    bool string(string_t &value) override {
        put(Located::Kind::text).text = std::move(value);
        return true;
    }
    bool binary(binary_t &) override { return false; } // JSON text has none
    bool start_object(std::size_t) override { return open(Located::Kind::object); }
    bool start_array(std::size_t) override { return open(Located::Kind::list); }
    bool key(string_t &value) override {
        key_at_ = begin_of_token();
        key_ = std::move(value);
        return true;
    }
    bool end_object() override {
        mark_doubled(*open_.back());
        return end_array();
    }
    bool end_array() override {
        open_.pop_back();
        end_ = read_;
        return true;
    }
    [[noreturn]] bool parse_error(std::size_t position, const std::string &,
                                  const nlohmann::json::exception &e) override {
        // "[json.exception.parse_error.101] parse error at line 1, column 2: what is wrong"
        std::string why = e.what();
        for (const char *lead : {"] ", "column "})
            if (const auto at = why.find(lead); at != std::string::npos)
                why.erase(0, at + std::string(lead).size());
        if (const auto colon = why.find(": "); colon < 12) why.erase(0, colon + 2);
        constexpr std::size_t most = 300;
        if (why.size() > most) {
            why.resize(most);
            while (!valid_utf8(why)) why.pop_back();
            why += "...";
        }
        throw DataError("this is not JSON: " + place_in(text_, position > 0 ? position - 1 : 0) + ": " + why);
    }

private:
    /// Where the token that was just read begins: after the last one, past blanks, commas and colons.
    std::size_t begin_of_token() {
        const std::size_t begin = std::min(text_.find_first_not_of(" \t\r\n,:", end_), text_.size());
        end_ = read_;
        return begin;
    }

    Located &put(Located::Kind kind) {
        if (++values_ > most_values_)
            throw DataError(place_in(text_, begin_of_token()) + ": more than " +
                            std::to_string(most_values_) + " values; give it in parts");
        Located *out = &root;
        if (!open_.empty()) {
            out = &open_.back()->items.emplace_back();
            if (open_.back()->kind == Located::Kind::object) {
                out->key = std::move(key_);
                out->key_at = key_at_;
            }
        }
        out->kind = kind;
        out->at = begin_of_token();
        return *out;
    }

    bool whole(std::int64_t value, bool is_whole) {
        Located &out = put(Located::Kind::number);
        out.whole = value;
        out.is_whole = is_whole;
        const std::size_t end = std::min(text_.find_first_of(" \t\r\n,]}", out.at), text_.size());
        out.text = text_.substr(out.at, end - out.at);
        return true;
    }

    bool open(Located::Kind kind) {
        Located &out = put(kind);
        if (open_.size() == deepest)
            throw DataError(place_in(text_, out.at) + ": lists and objects are nested deeper than " +
                            std::to_string(deepest));
        // An opened item stays where it is: its list grows only once it is closed.
        open_.push_back(&out);
        return true;
    }

    static void mark_doubled(Located &object) {
        std::vector<Located *> items;
        for (auto &item : object.items) items.push_back(&item);
        std::stable_sort(items.begin(), items.end(),
                         [](const Located *a, const Located *b) { return a->key < b->key; });
        for (std::size_t i = 1; i < items.size(); ++i)
            items[i]->key_given_twice = items[i]->key == items[i - 1]->key;
    }

    const std::string &text_;
    const std::size_t &read_; ///< bytes that the parser has taken
    std::size_t end_;         ///< of the last token
    std::size_t values_ = 0, most_values_;
    std::vector<Located *> open_;
    std::string key_;
    std::size_t key_at_ = 0;
};

} // namespace

const Located *Located::find(const std::string &wanted) const {
    for (const auto &item : items)
        if (item.key == wanted) return &item;
    return nullptr;
}

std::string Located::said() const {
    switch (kind) {
    case Kind::null: return "null";
    case Kind::truth: return yes ? "true" : "false";
    case Kind::number: return shown(text);
    case Kind::text: return "\"" + shown(text) + "\"";
    case Kind::list: return "a list";
    case Kind::object: break;
    }
    return "an object";
}

Located read_located(const std::string &text, std::size_t most_values) {
    std::size_t read = 0;
    Builder builder(text, read, most_values);
    nlohmann::json::sax_parse(Counting(text.data(), &read), Counting(text.data() + text.size(), &read),
                              &builder);
    return std::move(builder.root);
}

std::string place_in(const std::string &text, std::size_t byte) {
    byte = std::min(byte, text.size());
    const auto begin = text.begin(), end = begin + static_cast<std::ptrdiff_t>(byte);
    const auto line = std::count(begin, end, '\n') + 1;
    auto line_begin = end;
    while (line_begin != begin && *(line_begin - 1) != '\n') --line_begin;
    const auto column = std::count_if(line_begin, end, [](char c) { return (c & 0xC0) != 0x80; }) + 1;
    return std::to_string(line) + ":" + std::to_string(column);
}

} // namespace beadbook::codec
