#pragma once

#include <boost/container/small_vector.hpp>
#include <span>

namespace beadbook {

/// Lists of a judgement are short, and a hundred thousand coupons must not mean as many allocations: these
/// keep their first elements in place.
template <class T>
using Few = boost::container::small_vector<T, 2>;
template <class T>
using Several = boost::container::small_vector<T, 10>;

/// Boost 1.74's iterators do not say that they are contiguous, so std::span needs to be told.
template <class List>
std::span<const typename List::value_type> view(const List &list) {
    return {list.data(), list.size()};
}

} // namespace beadbook
