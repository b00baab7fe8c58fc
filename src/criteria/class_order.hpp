#pragma once

#include "criteria/doubts.hpp"

namespace beadbook {

/// Of an ordered set, where most of the rules that tell its classes apart go against their order: it is the
/// order that is wrong, and an error tells it once, with the one that would fit. Whether it was.
bool tell_turned_order(const CriteriaSet &set, Issues &issues);
/// Of an ordered set: an error where a class lets more through than a looser one, tried on coupons and finds
/// that its conditions and the scope leave; a doubt if that needs quantities far apart, which may be no
/// coupon. A class that is silent is passed over, and one that is
/// blank yet hides none behind it. A doubt too where a looser class asks for an exam that the
/// stricter one does not.
void check_order(const CriteriaSet &set, Issues &issues, Doubts &doubts);
/// The rest of it, doubts alone: classes with stretches of their own, what one leaves open and a looser one
/// forbids, relevance, and rules that share the classes.
void check_order_elsewhere(const CriteriaSet &set, Doubts &doubts);

} // namespace beadbook
