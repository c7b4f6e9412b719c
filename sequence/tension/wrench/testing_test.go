package wrench

const in = 25.4 // mm, NIST SP 811, B.8
