#include "core/base/text.h"
