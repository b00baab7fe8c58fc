#include "measure/words_apart.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {

std::vector<std::string> words_apart(std::string text, bool (*is_blank)(char)) {
    std::replace_if(text.begin(), text.end(), is_blank, ' ');
    const auto words = words_of(text);
    return {words.begin(), words.end()};
}

bool is_ascii_sign(char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte < 0x80 && std::isalnum(byte) == 0;
}

} // namespace beadbook
