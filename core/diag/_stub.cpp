#include "core/diag/place.h"
