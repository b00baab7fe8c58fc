#include "records/codecs/parts.hpp"

#include "measure/refusal.hpp"

#include <charconv>

namespace beadbook::codec {
namespace {

[[noreturn]] void refuse() { throw StoreError("what lists say of a coupon cannot be read"); }

} // namespace

void PartsWriter::put(std::string_view part) {
    text_ += std::to_string(part.size());
    text_ += ':';
    text_ += part;
}

std::string_view PartsReader::next() {
    std::size_t size = 0, at = 0;
    for (; at < rest_.size() && rest_[at] >= '0' && rest_[at] <= '9' && size <= rest_.size(); ++at)
        size = 10 * size + static_cast<std::size_t>(rest_[at] - '0');
    if (at == 0 || at == rest_.size() || rest_[at] != ':' || size > rest_.size() - at - 1) refuse();
    const std::string_view out = rest_.substr(at + 1, size);
    rest_.remove_prefix(at + 1 + size);
    return out;
}

std::int64_t PartsReader::number() {
    const std::string_view part = next();
    std::int64_t out = 0;
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), out);
    if (error != std::errc() || end != part.data() + part.size()) refuse();
    return out;
}

} // namespace beadbook::codec
