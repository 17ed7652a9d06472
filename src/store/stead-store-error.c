/* stead-store-error.c - the quark of the layer's error domain. */
#include "config.h"

#include "store/stead-store-error.h"

G_DEFINE_QUARK (stead-store-error-quark, stead_store_error)
