#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace beadbook::codec {

/// A row of texts and whole numbers, each behind its length, for what the same program reads back: read many
/// times faster than JSON, which keeps what must last.
class PartsWriter {
public:
    void put(std::string_view part);
    void put_number(std::int64_t number) { put(std::to_string(number)); }
    template <class Parts, class Put>
    void put_all(const Parts &parts, Put one) {
        put_number(static_cast<std::int64_t>(parts.size()));
        for (const auto &part : parts) one(part);
    }
    std::string text() && { return std::move(text_); }

private:
    std::string text_;
};

/// Reads them in the same order. Throws StoreError where there is no such part. The text outlives it.
class PartsReader {
public:
    explicit PartsReader(std::string_view text) : rest_(text) {}

    std::string_view next();
    std::string text() { return std::string(next()); }
    std::int64_t number();
    template <class Take>
    void each(Take one) {
        for (std::int64_t left = number(); left > 0; --left) one();
    }
    bool at_end() const { return rest_.empty(); }

private:
    std::string_view rest_;
};

} // namespace beadbook::codec
