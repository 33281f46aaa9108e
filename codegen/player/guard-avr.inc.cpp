#if !defined(__AVR__)
#error "This sketch is made for an ATmega328P. Choose a board with that chip, or make the sketch anew for yours."
#endif
