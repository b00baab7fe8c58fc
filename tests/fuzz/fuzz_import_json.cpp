// Any bytes as an exchange file: refused, or read with each mistake at a place within it.
#include "measure/refusal.hpp"
#include "records/codecs/exchange.hpp"
#include "records/codecs/located.hpp"

#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *bytes, std::size_t size) {
    using namespace beadbook;
    const std::string text(reinterpret_cast<const char *>(bytes), size);
    try {
        for (const auto &coupon : codec::read_exchange(text))
            for (const auto &mistake : coupon.mistakes) {
                if (mistake.at > text.size()) std::abort();
                codec::place_in(text, mistake.at);
            }
    } catch (const Refusal &) {
    }
    return 0;
}
